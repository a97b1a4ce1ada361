pragma ComponentBehavior: Bound
import QtQuick

// Asks for files, or for a folder, with the dialog of the device. It is loaded when it is first
// needed. Emits filesChosen(files) or folderChosen(folder).
Item {
    id: chooser

    property bool folders: false
    property string title
    property list<string> filters

    signal filesChosen(var files)
    signal folderChosen(url folder)

    function open() {
        if (loader.status === Loader.Null)
            loader.setSource(Qt.resolvedUrl(chooser.folders ? "FolderPicker.qml" : "FilePicker.qml"), {
                "title": chooser.title,
                "filters": chooser.filters,
                "over": chooser.Window.window
            });
        loader.item.open(); // qmllint disable missing-property
    }

    Loader {
        id: loader
    }
    Connections {
        target: loader.item
        ignoreUnknownSignals: true

        function onFilesChosen(files: var) {
            chooser.filesChosen(files);
        }
        function onFolderChosen(folder: url) {
            chooser.folderChosen(folder);
        }
    }
}
