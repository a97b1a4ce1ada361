pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// On which days of the week the keeper feeds, and how many in one evening.
BottomSheet {
    id: sheet

    required property EveningsModel evenings

    title: qsTr("Your feeding days")
    closeText: qsTr("Done")

    Repeater {
        model: 7

        // The rows stay when a day is switched, and the focus with them.
        SwitchRow {
            id: row

            required property int index

            readonly property var day: sheet.evenings.weekdays[row.index]

            width: parent?.width ?? 0
            text: row.day?.name ?? ""
            on: row.day?.on ?? false
            wordOn: qsTr("Feed")
            wordOff: qsTr("Free")
            onToggled: sheet.evenings.toggleDay(row.index)
        }
    }
    StepRow {
        width: parent.width
        name: qsTr("In one evening")
        value: sheet.evenings.mostText
        lessText: qsTr("In one evening: fewer")
        moreText: qsTr("In one evening: more")
        canLess: sheet.evenings.limited
        onLess: sheet.evenings.stepMost(-1)
        onMore: sheet.evenings.stepMost(1)
    }
}
