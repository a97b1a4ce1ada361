import QtQuick
import Burrow.Components

// One layer of a rule: its value and where it comes from. The keeper's own can be taken back: `note` says
// what would hold then. Emits takenBack().
Strip {
    id: layer

    required property string value
    required property string from
    required property string source
    required property string note
    property bool holds: false
    property bool own: false

    signal takenBack

    spacing: 2

    StepText {
        width: parent.width
        step: Tokens.bodyStrong
        color: layer.holds ? Tokens.ink : Tokens.inkSoft
        text: layer.value
    }
    StepText {
        width: parent.width
        step: Tokens.reason
        text: layer.holds ? qsTr("%1: this one holds").arg(layer.from) : layer.from
    }
    StepText {
        width: parent.width
        visible: text !== ""
        step: Tokens.label
        weight: Font.Normal
        color: Tokens.inkSoft
        text: layer.source
    }
    StepText {
        width: parent.width
        visible: text !== ""
        step: Tokens.reason
        color: Tokens.inkSoft
        text: layer.note
    }
    ActionButton {
        width: parent.width
        visible: layer.own
        kind: "secondary"
        glyph: "undo"
        text: qsTr("Take it back")
        Accessible.name: qsTr("Take it back: %1, %2").arg(layer.value).arg(layer.from)
        onActivated: layer.takenBack()
    }
}
