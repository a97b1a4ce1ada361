import QtQuick
import Burrow.Components

// One photo that is not saved yet, and the way to let it go. A touch shows its own colours.
Column {
    id: photo

    required property url source
    required property string name

    signal removed

    width: 108
    spacing: 0

    PhotoBox {
        id: box
        width: parent.width
        height: 108
        source: photo.source
        text: photo.name
        onActivated: box.bright = !box.bright
    }
    ActionButton {
        width: parent.width
        kind: "plain"
        text: qsTr("Remove")
        Accessible.name: qsTr("Remove %1").arg(photo.name)
        onActivated: photo.removed()
    }
}
