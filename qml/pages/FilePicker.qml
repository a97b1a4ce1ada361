import QtQuick
import QtQuick.Dialogs

// The device's dialog for choosing files.
FileDialog {
    id: dialog

    property list<string> filters
    required property Window over

    signal filesChosen(var files)

    objectName: "fileDialog"
    parentWindow: dialog.over
    modality: Qt.WindowModal
    fileMode: FileDialog.OpenFiles
    nameFilters: dialog.filters
    onAccepted: dialog.filesChosen(dialog.selectedFiles)
}
