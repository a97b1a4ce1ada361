import QtCore
import QtQuick
import QtQuick.Dialogs

// The device's dialog for choosing a folder; it starts where documents are kept. Emits left() when it
// has been answered.
FolderDialog {
    id: dialog

    property var filters: []
    required property Window over

    signal folderChosen(url folder)
    signal left

    objectName: "folderDialog"
    parentWindow: dialog.over
    modality: Qt.WindowModal
    currentFolder: StandardPaths.writableLocation(StandardPaths.DocumentsLocation)
    onAccepted: {
        dialog.folderChosen(dialog.selectedFolder);
        dialog.left();
    }
    onRejected: dialog.left()
    Component.onCompleted: dialog.open()
}
