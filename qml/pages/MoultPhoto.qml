import QtQuick
import Burrow.Components

// One photo that is not saved yet: whether it can be measured, fresh or dried, and the way to let it go. A
// touch shows its own colours.
Column {
    id: photo

    required property url source
    required property string name
    property string note
    property bool dried: false

    signal removed
    signal turned

    width: 108
    spacing: 0

    PhotoBox {
        id: box
        width: parent.width
        height: 108
        source: photo.source
        text: photo.note === "" ? photo.name : photo.name + ". " + photo.note
        onActivated: box.bright = !box.bright
    }
    StepText {
        width: parent.width
        topPadding: Tokens.space4
        step: Tokens.label
        color: Tokens.inkSoft
        text: photo.note
        Accessible.ignored: true
    }
    ActionButton {
        width: parent.width
        kind: "plain"
        text: photo.dried ? qsTr("Dried") : qsTr("Fresh")
        Accessible.name: qsTr("%1, %2. Change that.").arg(text).arg(photo.name)
        onActivated: photo.turned()
    }
    ActionButton {
        width: parent.width
        kind: "plain"
        text: qsTr("Remove")
        Accessible.name: qsTr("Remove %1").arg(photo.name)
        onActivated: photo.removed()
    }
}
