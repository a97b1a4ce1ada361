import QtQuick
import Burrow.Components
import Burrow.ViewModels

// A day, chosen in a sheet.
PickRow {
    id: view

    required property FormField entry
    required property Kit kit

    name: view.entry.label
    value: view.entry.day.known ? view.entry.day.words : ""
    placeholder: view.entry.day.words
    sub: view.entry.error
    onActivated: sheet.open()

    DaySheet {
        id: sheet
        title: view.entry.label
        day: view.entry.day
    }
}
