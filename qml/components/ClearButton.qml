import QtQuick

// The cross that empties a text line. `text` names it for a screen reader.
PressArea {
    id: button

    contentItem: Item {
        Glyph {
            anchors.centerIn: parent
            width: 20
            height: 20
            name: "cross"
            color: button.down ? Tokens.ink : Tokens.inkSoft
        }
    }
    background: null
}
