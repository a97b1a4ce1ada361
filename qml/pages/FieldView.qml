import QtQuick
import Burrow.ViewModels

// One field of a form, shown by its type.
Loader {
    id: view

    required property FormField entry
    required property Kit kit

    function fileFor(type: int): string {
        switch (type) {
        case FormField.Count:
            return "FieldCount.qml";
        case FormField.Choice:
            return "FieldChoice.qml";
        case FormField.Flag:
            return "FieldFlag.qml";
        case FormField.Day:
            return "FieldDay.qml";
        case FormField.Enclosure:
            return "FieldEnclosure.qml";
        default:
            return "FieldText.qml";
        }
    }

    visible: view.entry.wanted
    Component.onCompleted: view.setSource(Qt.resolvedUrl(view.fileFor(view.entry.type)), {
                                              "entry": view.entry,
                                              "kit": view.kit
                                          })
}
