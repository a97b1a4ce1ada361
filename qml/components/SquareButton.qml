import QtQuick

// A 56 by 56 button with an icon alone; `text` is its name for a screen reader. Emits activated().
PressArea {
    id: button

    required property string glyph

    implicitWidth: Tokens.shelfTarget
    implicitHeight: Tokens.shelfTarget

    contentItem: Item {
        Glyph {
            anchors.centerIn: parent
            name: button.glyph
            color: button.enabled ? Tokens.ink : Tokens.edge
        }
    }
    background: Rectangle {
        radius: Tokens.radiusControl
        color: button.down ? Tokens.pressed : button.enabled ? Tokens.raised : "transparent"
        border.width: Tokens.lineControl
        border.color: button.enabled ? Tokens.edge : Tokens.rule
    }
}
