import QtQuick
import Burrow.Components
import Burrow.ViewModels

// Whom the sitter calls when the keeper can't be reached; it stands on the sheet.
BottomSheet {
    id: sheet

    required property AwayModel away

    function begin() {
        line.text = sheet.away.call;
        sheet.open();
    }

    title: qsTr("Whom else the sitter calls")
    closeText: qsTr("Close")
    mainText: qsTr("Keep")
    mainGlyph: "check"
    onMain: {
        sheet.away.setCall(line.text);
        sheet.close();
    }

    TextLine {
        id: line
        width: parent.width
        label: qsTr("Name and number")
        hint: qsTr("Best somebody who can handle what you keep.")
        clearText: qsTr("Empty the line")
        field.maximumLength: 120
        onAccepted: sheet.main()
    }
}
