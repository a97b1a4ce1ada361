import QtCore
import QtQuick
import QtQuick.Dialogs

// The device's dialog for choosing a folder; it starts where documents are kept.
FolderDialog {
    id: dialog

    property list<string> filters
    required property Window over

    signal folderChosen(url folder)

    objectName: "folderDialog"
    parentWindow: dialog.over
    modality: Qt.WindowModal
    currentFolder: StandardPaths.writableLocation(StandardPaths.DocumentsLocation)
    onAccepted: dialog.folderChosen(dialog.selectedFolder)
}
