pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// The enclosures of the room to choose from. Emits picked(enclosure, name): with an empty id for none
// and "new" for one that is yet to be made.
BottomSheet {
    id: sheet

    required property EnclosureList list

    signal picked(string enclosure, string name)

    function pick(enclosure: string, name: string) {
        sheet.close();
        sheet.picked(enclosure, name);
    }

    closeText: qsTr("Close")

    OutcomeGrid {
        width: parent.width

        OutcomeButton {
            text: qsTr("A new one")
            glyph: "plus"
            onActivated: sheet.pick("new", "")
        }
        OutcomeButton {
            text: qsTr("None")
            glyph: "cross"
            onActivated: sheet.pick("", "")
        }
    }
    SearchLine {
        width: parent.width
        placeholder: qsTr("Name, place or number")
        clearText: qsTr("Empty the search")
        text: sheet.list.query
        onEdited: sheet.list.query = text
    }
    Repeater {
        model: sheet.list

        PickRow {
            id: row

            required property var model

            width: parent.width
            name: row.model.note
            value: row.model.name
            Accessible.name: row.model.name + ", " + row.model.note
            onActivated: sheet.pick(row.model.enclosure, row.model.name)
        }
    }
    StepText {
        width: parent.width
        visible: text !== ""
        topPadding: step.above + Tokens.space8
        step: Tokens.reason
        color: Tokens.inkSoft
        text: sheet.list.rest
    }
}
