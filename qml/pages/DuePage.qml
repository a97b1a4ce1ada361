pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// What is due today, by shelf in the order of a walk: each line says what and why. (Heads are made by
// hand: in Qt 6.4 a view's own header and sections can't use what this page holds.)
PageFrame {
    id: page

    required property Kit kit

    readonly property DueModel list: DueModel {
        desk: page.kit.desk
        filter: page.filter
    }
    readonly property DueFilterModel filter: DueFilterModel {
        desk: page.kit.desk
    }

    ListView {
        id: view

        // Until it is moved, the view stays at its beginning while the head takes its height.
        property bool moved: false

        objectName: "dueList"
        anchors.fill: parent
        activeFocusOnTab: true
        model: page.list
        spacing: Tokens.betweenStrips
        cacheBuffer: Tokens.space48
        topMargin: head.height
        bottomMargin: Tokens.space48
        onMovementStarted: view.moved = true
        delegate: Column {
            id: entry

            required property int index
            required property var model

            x: page.contentX
            width: page.contentWidth

            LateShelfHead {
                width: parent.width
                name: entry.model.heading
                count: entry.model.headingNote
                onActivated: {
                    page.kit.round.start(entry.model.heading);
                    page.kit.navigation.round();
                }
            }
            StripRow {
                width: parent.width
                punch: entry.model.punch
                tag: entry.model.tag
                binomial: entry.model.binomial
                verb: entry.model.verb
                reason: entry.model.reason
                held: entry.model.held
                look: entry.model.look
                rightWord: entry.model.canFeed ? qsTr("Took it") : ""
                leftWord: qsTr("Other")
                line.marks: entry.model.marks
                line.feedings: entry.model.feedings
                line.nowDay: entry.model.nowDay
                line.description: entry.model.lineText
                onActivated: {
                    page.kit.round.goTo(entry.model.subject);
                    page.kit.navigation.round();
                }
                onSwipedRight: page.list.logUsual(entry.model.subject)
                onSwipedLeft: page.kit.navigation.log(entry.model.subject)
            }
        }
    }
    // Scrolls with the rows, above the first.
    PageHead {
        id: head
        parent: view.contentItem
        x: page.contentX
        y: -height
        width: page.contentWidth
        title: qsTr("Due today")
        sub: page.list.summary
        trouble: page.kit.desk.trouble
        demo: page.kit.desk.demo
        onDismissed: page.kit.desk.dismissTrouble()
        onHeightChanged: if (!view.moved)
            view.positionViewAtBeginning()

        DueShown {
            width: parent.width
            visible: page.list.count > 0 || page.filter.active
            filter: page.filter
            onChanging: sheet.ask()
        }
    }
    LateDueFilter {
        id: sheet
        filter: page.filter
    }
    Loader {
        id: nothing
        x: page.contentX
        y: head.height + Tokens.space16
        width: page.contentWidth
        active: page.list.count === 0
        source: Qt.resolvedUrl("NothingDue.qml")
        onLoaded: (item as EmptyStrip).sentence = Qt.binding(() => page.list.nothing)

        Binding {
            target: nothing.item
            property: "part"
            value: page.filter.active
        }
    }
}
