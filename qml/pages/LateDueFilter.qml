import QtQuick
import Burrow.ViewModels

// The filter sheet of the due list, made when it is first asked for.
Loader {
    id: late

    required property DueFilterModel filter

    function ask() {
        if (late.status === Loader.Null)
            late.setSource(Qt.resolvedUrl("DueFilterPlace.qml"), {
                "filter": late.filter
            });
        (late.item as DueFilterPlace).ask();
    }
}
