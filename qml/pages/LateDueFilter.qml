pragma ComponentBehavior: Bound
import QtQuick
import Burrow.ViewModels

// The filter sheet of the due list, made when it is first asked for.
Loader {
    id: late

    required property DueFilterModel filter

    signal asked

    function ask() {
        late.active = true;
        late.asked();
    }

    active: false
    sourceComponent: Item {
        DueFilterSheet {
            id: sheet
            filter: late.filter
        }
        Connections {
            target: late
            function onAsked() {
                sheet.open();
            }
        }
    }
}
