import QtQuick
import Burrow.Components
import Burrow.ViewModels

// An enclosure from the book, a new one, or none.
PickRow {
    id: view

    required property FormField entry
    required property Kit kit

    name: view.entry.label
    value: view.entry.text === "new" ? qsTr("A new one") : view.entry.shown
    placeholder: qsTr("None recorded")
    sub: view.entry.error
    onActivated: {
        list.read();
        sheet.open();
    }

    EnclosureList {
        id: list
        desk: view.kit.desk
    }
    EnclosureSheet {
        id: sheet
        title: view.entry.label
        list: list
        onPicked: (enclosure, name) => view.entry.pick(enclosure, name)
    }
}
