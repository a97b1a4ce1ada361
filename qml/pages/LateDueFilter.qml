pragma ComponentBehavior: Bound
import QtQuick
import Burrow.ViewModels

// The filter sheet of the due list, made when it is first asked for.
Item {
    id: late

    required property DueFilterModel filter

    signal asked

    function ask() {
        maker.active = true;
        late.asked();
    }

    Loader {
        id: maker
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
}
