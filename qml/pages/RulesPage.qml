pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// The rules of thumb the book goes by, each with where it comes from. Any of them can be changed.
PageFrame {
    id: page

    required property Kit kit

    readonly property RulesModel rules: RulesModel {
        desk: page.kit.desk
    }
    readonly property NumbersModel numbers: NumbersModel {
        desk: page.kit.desk
    }

    StripList {
        anchors.fill: parent
        objectName: "rulesList"
        model: page.rules
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
                says: entry.model.says
                value: entry.model.value
                from: entry.model.from
                source: entry.model.source
                also: entry.model.also
                own: entry.model.own
                onActivated: page.kit.navigation.pushed("RulePage", {
                    "rule": entry.model.rule
                })
            }
        }
    }
    Column {
        id: head
        x: page.contentX
        width: page.contentWidth
        bottomPadding: Tokens.space8

        PageHead {
            width: parent.width
            title: qsTr("Rules of thumb")
            sub: page.rules.summary
            trouble: page.kit.desk.trouble
            onDismissed: page.kit.desk.dismissTrouble()
        }
        WayRow {
            width: parent.width
            glyph: "ruler"
            text: qsTr("The tables of numbers")
            sub: page.numbers.summary
            onActivated: page.kit.navigation.pushed("NumbersPage", {})
        }
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
