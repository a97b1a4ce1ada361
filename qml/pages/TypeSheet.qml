import QtQuick
import Burrow.Components

// The tag, typed. Emits typed(text).
BottomSheet {
    id: sheet

    signal typed(string text)

    title: qsTr("Type the tag")
    closeText: qsTr("Close")
    mainText: qsTr("Find it")
    mainGlyph: "search"
    mainEnabled: tag.text.trim() !== ""
    onOpened: tag.field.forceActiveFocus(Qt.OtherFocusReason)
    onMain: {
        sheet.close();
        sheet.typed(tag.text);
        tag.text = "";
    }

    TextLine {
        id: tag
        width: parent.width
        code: true
        label: qsTr("Its number, or the code under the square")
        hint: qsTr("O counts as 0, I and L as 1")
        clearText: qsTr("Empty")
        field.inputMethodHints: Qt.ImhNoAutoUppercase | Qt.ImhNoPredictiveText
        field.maximumLength: 40
        onAccepted: if (sheet.mainEnabled)
            sheet.main()
    }
}
