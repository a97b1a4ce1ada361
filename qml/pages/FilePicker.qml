import QtQuick
import QtQuick.Dialogs

// The device's dialog for choosing files. Emits left() when it has been answered.
FileDialog {
    id: dialog

    property var filters: []
    required property Window over

    signal filesChosen(var files)
    signal left

    objectName: "fileDialog"
    parentWindow: dialog.over
    modality: Qt.WindowModal
    fileMode: FileDialog.OpenFiles
    nameFilters: dialog.filters
    onAccepted: {
        dialog.filesChosen(dialog.selectedFiles);
        dialog.left();
    }
    onRejected: dialog.left()
    Component.onCompleted: dialog.open()
}
