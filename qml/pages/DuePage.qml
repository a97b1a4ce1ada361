pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// What is due today, by shelf in the order of a walk: each line says what and why. (The heads are
// parts of rows: in Qt 6.4 a view's own header and sections can't use what this page holds.)
PageFrame {
    id: page

    required property Kit kit

    readonly property DueModel list: DueModel {
        desk: page.kit.desk
    }

    ListView {
        objectName: "dueList"
        anchors.fill: parent
        activeFocusOnTab: true
        model: page.list
        spacing: Tokens.betweenStrips
        bottomMargin: Tokens.space48
        delegate: Column {
            id: entry

            required property int index
            required property var model

            x: page.contentX
            width: page.contentWidth

            DuePageHead {
                width: parent.width
                visible: entry.index === 0
                kit: page.kit
                due: page.list
            }
            ShelfHead {
                width: parent.width
                visible: entry.model.heading !== ""
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
    Column {
        x: page.contentX
        width: page.contentWidth
        visible: page.list.count === 0
        spacing: Tokens.space16

        DuePageHead {
            width: parent.width
            kit: page.kit
            due: page.list
        }
        EmptyStrip {
            width: parent.width
            drawing: "shelf"
            sentence: page.list.nothing
            detail: qsTr("Every tub on every shelf is looked after for today.")
        }
    }
}
