import QtQuick

// The paper of a strip: square, no shadow, outlined in daylight. `bar` is the colour of the 5 wide
// edge of a strip that needs a decision; `held` lets the ground through; `pressed` lifts it.
Rectangle {
    id: paper

    property bool held: false
    property bool pressed: false
    property color bar: "transparent"

    color: paper.pressed ? Tokens.raised : paper.held ? Tokens.heldStrip : Tokens.strip
    radius: Tokens.radiusPaper
    border.width: Tokens.lineHairline
    border.color: Tokens.stripEdge

    Rectangle {
        width: Tokens.edgeBar
        height: parent.height
        radius: Tokens.radiusPaper
        color: paper.bar
    }
}
