pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// Moults with photos that nobody has looked at for the sex yet, the oldest first.
PageFrame {
    id: page

    required property Kit kit

    readonly property SexQueueModel queue: SexQueueModel {
        desk: page.kit.desk
    }

    ListView {
        id: view
        objectName: "sexQueue"
        anchors.fill: parent
        activeFocusOnTab: true
        model: page.queue
        spacing: Tokens.betweenStrips
        topMargin: head.height
        bottomMargin: Tokens.space48
        delegate: SexQueueRow {
            required property var model

            x: page.contentX
            width: page.contentWidth
            thumbnail: model.thumbnail
            tag: model.tag
            binomial: model.binomial
            about: model.about
            when: model.when
            photos: model.photos
            onActivated: page.kit.navigation.pushed("SexPage", {
                "moult": model.moult
            })
        }
    }
    PageHead {
        id: head
        parent: view.contentItem
        x: page.contentX
        y: -height
        width: page.contentWidth
        title: qsTr("Moults to be sexed")
        sub: page.queue.count > 0 ? page.queue.summary : ""
        trouble: page.kit.desk.trouble
        onDismissed: page.kit.desk.dismissTrouble()
        onHeightChanged: view.positionViewAtBeginning()
    }
    EmptyStrip {
        x: page.contentX
        y: head.height + Tokens.space16
        width: page.contentWidth
        visible: page.queue.ready && page.queue.count === 0
        drawing: "line"
        sentence: qsTr("No moult waits")
        detail: qsTr("A moult that is saved with a photo comes here until somebody has looked at it.")
    }
    lower: UndoOverlay {
        width: parent.width
        visible: live
        kit: page.kit
    }
    bar: ContextBar {
        width: parent.width
        backText: qsTr("Back")
        onBack: page.kit.navigation.backed()
    }
}
