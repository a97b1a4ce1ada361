pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// The numbers of the tables, each row with where it comes from. Any row can be changed.
PageFrame {
    id: page

    required property Kit kit

    readonly property NumbersModel numbers: NumbersModel {
        desk: page.kit.desk
    }

    StripList {
        anchors.fill: parent
        objectName: "numbersList"
        model: page.numbers
        head: head
        delegate: Column {
            id: entry

            required property var model

            x: page.contentX
            width: page.contentWidth

            SectionHead {
                width: parent.width
                visible: name !== ""
                name: entry.model.heading
            }
            RuleStrip {
                width: parent.width
                says: entry.model.title
                value: entry.model.value
                from: entry.model.from
                source: entry.model.source
                also: entry.model.also
                own: entry.model.own
                onActivated: page.kit.navigation.pushed("NumberPage", {
                    "row": entry.model.place
                })
            }
        }
    }
    PageHead {
        id: head
        x: page.contentX
        width: page.contentWidth
        title: qsTr("The tables of numbers")
        sub: page.numbers.summary
        trouble: page.kit.desk.trouble
        onDismissed: page.kit.desk.dismissTrouble()
    }
    UndoOverlay {
        anchors.bottom: parent.bottom
        anchors.bottomMargin: Tokens.space12
        x: page.contentX
        width: page.contentWidth
        kit: page.kit
    }
    bar: ContextBar {
        width: parent.width
        backText: qsTr("Back")
        onBack: page.kit.navigation.backed()
    }
}
