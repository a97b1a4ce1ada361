import QtQuick

// The ring around whatever the keyboard has reached: 3 wide, in ink, 2 outside the control.
// `corner` is the control's own corner radius.
Rectangle {
    id: ring

    property bool shown: false
    property real corner: Tokens.radiusControl

    readonly property real away: Tokens.lineFocus + 2

    anchors.fill: parent
    anchors.margins: -ring.away
    z: 1
    visible: ring.shown
    color: "transparent"
    radius: ring.corner + ring.away
    border.width: Tokens.lineFocus
    border.color: Tokens.ink
}
