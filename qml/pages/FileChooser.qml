pragma ComponentBehavior: Bound
import QtQuick

// Asks for files, or for a folder, with the dialog of the device, which is loaded for the asking. Emits
// filesChosen(files) or folderChosen(folder).
Item {
    id: chooser

    property bool folders: false
    property string title
    property var filters: []

    signal filesChosen(var files)
    signal folderChosen(url folder)

    function open() {
        loader.setSource(Qt.resolvedUrl(chooser.folders ? "FolderPicker.qml" : "FilePicker.qml"), {
            "title": chooser.title,
            "filters": chooser.filters,
            "over": chooser.Window.window
        });
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
        function onLeft() {
            loader.source = "";
        }
    }
}
