pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// Animals whose sex is open and of whose moults there are photos, and moults of other keepers to judge.
PageFrame {
    id: page

    required property Kit kit

    readonly property SexQueueModel queue: SexQueueModel {
        desk: page.kit.desk
    }

    readonly property OpinionModel opinion: OpinionModel {
        desk: page.kit.desk
        sharer: page.kit.sharer
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
            detail: model.detail
            spoken: model.spoken
            looked: model.looked
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
    FileChooser {
        id: answers
        title: qsTr("An answer")
        filters: [qsTr("Answers (*.burrowsaid)"), qsTr("All files (*)")]
        onFilesChosen: files => page.opinion.takeIn(files[0])
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
    lower: Column {
        width: parent.width
        spacing: Tokens.betweenStrips

        OpinionDone {
            width: parent.width
            doneText: page.opinion.doneText
            trouble: page.opinion.trouble
        }
        UndoOverlay {
            width: parent.width
            visible: live
            kit: page.kit
        }
    }
    bar: ContextBar {
        width: parent.width
        backText: qsTr("Back")
        mainText: qsTr("Judge another's")
        mainGlyph: "look"
        helperText: qsTr("Answer")
        helperGlyph: "bring-in"
        onMain: page.kit.navigation.pushed("JudgePage", {})
        onHelper: answers.open()
        onBack: page.kit.navigation.backed()
    }
}
