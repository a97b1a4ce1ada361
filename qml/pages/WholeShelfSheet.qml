pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// A whole shelf watered or dampened as one act, with those left out that were not.
BottomSheet {
    id: sheet

    required property ShelfModel shelf

    title: sheet.shelf.title
    closeText: qsTr("Close")

    OutcomeGrid {
        width: parent.width

        OutcomeButton {
            text: qsTr("Watered")
            glyph: "water"
            enabled: sheet.shelf.included > 0
            onActivated: sheet.shelf.water()
        }
        OutcomeButton {
            text: qsTr("Dampened")
            glyph: "damp"
            enabled: sheet.shelf.included > 0
            onActivated: sheet.shelf.dampen()
        }
    }
    StepText {
        width: parent.width
        topPadding: step.above + Tokens.space8
        step: Tokens.reason
        color: Tokens.inkSoft
        text: qsTr("Whoever got nothing can be left out.")
    }
    Repeater {
        model: sheet.shelf

        SwitchRow {
            id: row

            required property var model

            width: parent.width
            text: row.model.tag
            sub: row.model.binomial
            wordOn: qsTr("In")
            wordOff: qsTr("Out")
            on: row.model.included
            onToggled: sheet.shelf.toggle(row.model.subject)
        }
    }
    Connections {
        target: sheet.shelf
        function onLogged() {
            sheet.close();
        }
    }
}
