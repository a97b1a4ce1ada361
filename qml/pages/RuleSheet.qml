import QtQuick
import Burrow.Components
import Burrow.ViewModels

// One rule of thumb, to be changed or put back to how it was shipped.
BottomSheet {
    id: sheet

    required property RulesModel rules

    function begin() {
        value.text = sheet.rules.typed;
        sheet.rules.clearError();
        sheet.open();
    }

    closeText: qsTr("Close")
    mainText: qsTr("Keep")
    mainGlyph: "check"
    mainEnabled: value.text.trim() !== ""
    onMain: sheet.rules.change(value.text)

    StepText {
        width: parent.width
        step: Tokens.heading
        text: sheet.rules.says
        Accessible.role: Accessible.Heading
    }
    StepText {
        width: parent.width
        step: Tokens.reason
        color: Tokens.inkSoft
        text: sheet.rules.shipped
    }
    TextLine {
        id: value
        width: parent.width
        code: true
        label: qsTr("Your value")
        hint: sheet.rules.hint
        error: sheet.rules.error
        clearText: qsTr("Empty the value")
        field.maximumLength: 40
        onEdited: sheet.rules.clearError()
        onAccepted: sheet.rules.change(value.text)
    }
    ActionButton {
        width: parent.width
        visible: sheet.rules.own
        kind: "secondary"
        glyph: "undo"
        text: qsTr("As shipped again")
        onActivated: sheet.rules.reset()
    }
}
