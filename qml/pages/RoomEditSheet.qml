import QtQuick
import Burrow.Components
import Burrow.ViewModels

// The name of the room, its code on tags, and how to reach its keeper.
BottomSheet {
    id: sheet

    required property RoomModel model

    function begin() {
        name.text = sheet.model.name;
        code.text = sheet.model.code;
        contact.text = sheet.model.contact;
        sheet.model.clearErrors();
        sheet.open();
    }
    function keep() {
        sheet.model.save(name.text, code.text, contact.text);
    }

    title: qsTr("The room")
    closeText: qsTr("Close")
    mainText: qsTr("Keep")
    mainGlyph: "check"
    onMain: sheet.keep()

    TextLine {
        id: name
        width: parent.width
        label: qsTr("Name of the room")
        error: sheet.model.nameError
        clearText: qsTr("Empty the name")
        field.maximumLength: 80
        onAccepted: sheet.keep()
    }
    TextLine {
        id: code
        width: parent.width
        code: true
        label: qsTr("Code on tags and sheets")
        hint: qsTr("A few letters or digits, such as KR")
        error: sheet.model.codeError
        clearText: qsTr("Empty the code")
        field.maximumLength: 12
        onAccepted: sheet.keep()
    }
    TextLine {
        id: contact
        width: parent.width
        label: qsTr("How to reach you")
        hint: qsTr("Printed on care sheets; leave it empty to keep it to yourself")
        clearText: qsTr("Empty the line")
        field.maximumLength: 120
        onAccepted: sheet.keep()
    }
    Connections {
        target: sheet.model
        function onSaved() {
            sheet.close();
        }
    }
}
