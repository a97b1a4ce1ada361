pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components

// The shelves of the room to choose from. Emits chosen(index).
BottomSheet {
    id: sheet

    // [{name, count}]
    required property list<var> shelves

    signal chosen(int index)

    title: qsTr("Which shelf")
    closeText: qsTr("Close")

    Repeater {
        model: sheet.shelves

        PickRow {
            required property int index
            required property var modelData

            width: parent.width
            name: modelData.count
            value: modelData.name
            onActivated: {
                sheet.close();
                sheet.chosen(index);
            }
        }
    }
}
