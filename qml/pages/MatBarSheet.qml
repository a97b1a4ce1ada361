import QtQuick
import Burrow.Components
import Burrow.ViewModels

// What the bar of one printed mat measures.
BottomSheet {
    id: sheet

    required property MatModel mat
    property string name

    function ask(name: string, title: string) {
        sheet.mat.clearBarError();
        sheet.name = name;
        sheet.title = title;
        line.text = "";
        sheet.open();
    }

    closeText: qsTr("Close")
    mainText: qsTr("Keep")
    mainGlyph: "check"
    onMain: sheet.mat.setBar(sheet.name, line.text)

    TextLine {
        id: line
        width: parent.width
        code: true
        label: qsTr("Length of the bar, mm")
        hint: qsTr("From the first to the last mark of the 100 mm. Read tenths between the marks of the ruler, or use a caliper.")
        error: sheet.mat.barError
        clearText: qsTr("Empty the length")
        field.inputMethodHints: Qt.ImhFormattedNumbersOnly
        field.maximumLength: 12
        onEdited: sheet.mat.clearBarError()
        onAccepted: sheet.main()
    }
}
