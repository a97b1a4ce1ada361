import QtQuick
import Burrow.Components
import Burrow.ViewModels

// When it happened: today, or a day further back at each tap; any other day in a sheet.
Item {
    id: row

    required property DayEntry day

    implicitHeight: steps.height + 2 * Tokens.space4

    StripGround {
        anchors.fill: parent
    }
    StepRow {
        id: steps
        x: Tokens.stripPadding
        y: Tokens.space4
        width: parent.width - Tokens.stripPadding - Tokens.rowPadding
        name: qsTr("When")
        value: row.day.glance
        lessText: qsTr("A day earlier")
        moreText: qsTr("A day later")
        canMore: row.day.canLater
        tappable: true
        onLess: row.day.step(DayEntry.Day, -1)
        onMore: row.day.step(DayEntry.Day, 1)
        onOpened: sheet.open()
    }
    DaySheet {
        id: sheet
        title: qsTr("When")
        day: row.day
    }
}
