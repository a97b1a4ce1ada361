import QtQuick
import Burrow.Components
import Burrow.ViewModels

// The first and the last day away, typed or a week at a time.
BottomSheet {
    id: sheet

    required property AwayModel away

    function begin() {
        sheet.fill();
        sheet.away.clearDaysError();
        sheet.open();
    }
    function fill() {
        first.text = sheet.away.fromTyped;
        last.text = sheet.away.toTyped;
    }

    title: qsTr("The days away")
    closeText: qsTr("Close")
    mainText: qsTr("Keep")
    mainGlyph: "check"
    onMain: sheet.away.typeDays(first.text, last.text)

    Connections {
        target: sheet.away
        function onDaysKept() {
            sheet.close();
        }
    }
    TextLine {
        id: first
        width: parent.width
        code: true
        label: qsTr("First day: year, month, day")
        placeholder: "2026-05-15"
        field.maximumLength: 10
        field.inputMethodHints: Qt.ImhPreferNumbers | Qt.ImhNoPredictiveText
        onEdited: sheet.away.clearDaysError()
        onAccepted: sheet.main()
    }
    TextLine {
        id: last
        width: parent.width
        code: true
        label: qsTr("Last day: year, month, day")
        placeholder: "2026-05-28"
        error: sheet.away.daysError
        field.maximumLength: 10
        field.inputMethodHints: Qt.ImhPreferNumbers | Qt.ImhNoPredictiveText
        onEdited: sheet.away.clearDaysError()
        onAccepted: sheet.main()
    }
}
