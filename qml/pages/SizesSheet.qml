pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// The kinds and sizes of feeders that are not counted yet. Emits picked(size).
BottomSheet {
    id: sheet

    required property LinesModel sizes

    signal picked(string size)

    title: qsTr("Which feeders")
    closeText: qsTr("Close")

    Repeater {
        model: sheet.sizes

        WayRow {
            required property var model

            width: parent?.width ?? 0
            text: model.name
            onActivated: {
                sheet.close();
                sheet.picked(model.key);
            }
        }
    }
}
