import QtQuick
import Burrow.ViewModels

// Where the filter sheet hangs: a sheet finds its window through an item.
Item {
    id: place

    required property DueFilterModel filter

    function ask() {
        sheet.open();
    }

    DueFilterSheet {
        id: sheet
        filter: place.filter
    }
}
