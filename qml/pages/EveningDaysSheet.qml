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
        model: sheet.evenings.weekdays

        SwitchRow {
            required property int index
            required property var modelData

            width: parent?.width ?? 0
            text: modelData.name
            on: modelData.on
            wordOn: qsTr("Feed")
            wordOff: qsTr("Free")
            onToggled: sheet.evenings.toggleDay(index)
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
