import QtQuick
import Burrow.Components
import Burrow.ViewModels

// A day, typed or reached by days, months and years.
BottomSheet {
    id: sheet

    required property DayEntry day

    closeText: qsTr("Done")

    StepRow {
        width: parent.width
        name: qsTr("Day")
        value: sheet.day.dayText
        lessText: qsTr("A day earlier")
        moreText: qsTr("A day later")
        canMore: sheet.day.canLater
        onLess: sheet.day.step(DayEntry.Day, -1)
        onMore: sheet.day.step(DayEntry.Day, 1)
    }
    StepRow {
        width: parent.width
        name: qsTr("Month")
        value: sheet.day.monthText
        lessText: qsTr("A month earlier")
        moreText: qsTr("A month later")
        canMore: sheet.day.canLater
        onLess: sheet.day.step(DayEntry.Month, -1)
        onMore: sheet.day.step(DayEntry.Month, 1)
    }
    StepRow {
        width: parent.width
        name: qsTr("Year")
        value: sheet.day.yearText
        lessText: qsTr("A year earlier")
        moreText: qsTr("A year later")
        canMore: sheet.day.canLater
        onLess: sheet.day.step(DayEntry.Year, -1)
        onMore: sheet.day.step(DayEntry.Year, 1)
    }
    TextLine {
        width: parent.width
        code: true
        label: qsTr("Or typed: year, month, day")
        placeholder: "2026-05-08"
        text: sheet.day.typed
        error: sheet.day.error
        field.maximumLength: 10
        field.inputMethodHints: Qt.ImhPreferNumbers | Qt.ImhNoPredictiveText
        onEdited: sheet.day.type(text)
        onAccepted: sheet.close()
    }
    Item {
        width: 1
        height: Tokens.space4
    }
    OutcomeGrid {
        width: parent.width

        OutcomeButton {
            text: qsTr("Today")
            glyph: "calendar"
            onActivated: sheet.day.setToday()
        }
        OutcomeButton {
            visible: sheet.day.canBeUnknown
            text: qsTr("Not known")
            glyph: "cross"
            onActivated: sheet.day.clear()
        }
    }
}
