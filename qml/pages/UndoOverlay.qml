import QtQuick
import Burrow.Components

// The undo slot over a list: shown while there is something to take back, in nobody's way.
UndoBar {
    id: overlay

    required property Kit kit

    opacity: overlay.live ? 1 : 0
    enabled: overlay.live
    tag: overlay.kit.desk.doneTag
    message: overlay.kit.desk.doneText
    serial: overlay.kit.desk.doneSerial
    undoText: qsTr("Undo")
    countdown: qsTr("%1 seconds")
    duration: overlay.kit.settings.undoTime
    onUndone: overlay.kit.desk.undo()
    onExpired: overlay.kit.desk.settle()
}
