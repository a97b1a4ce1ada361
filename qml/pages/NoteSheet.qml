import QtQuick
import Burrow.Components

// A note to type. Emits written(text).
BottomSheet {
    id: sheet

    signal written(string text)

    title: qsTr("Note")
    closeText: qsTr("Close")
    mainText: qsTr("Keep the note")
    mainGlyph: "check"
    mainEnabled: note.text.trim() !== ""
    onMain: {
        sheet.written(note.text);
        note.text = "";
        sheet.close();
    }

    TextLine {
        id: note
        width: parent.width
        label: qsTr("What you saw")
        clearText: qsTr("Empty the note")
        field.maximumLength: 1000
        onAccepted: if (sheet.mainEnabled)
            sheet.main()
    }
}
