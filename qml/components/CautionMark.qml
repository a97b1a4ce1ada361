import QtQuick

// A danger in one word (`word`: Fast, Hairs, Sting, Strong venom) with a triangle in a frame.
// `plain` is the word alone, for a second mark under a framed one.
Rectangle {
    id: mark

    required property string word
    property bool plain: false

    readonly property real inset: mark.plain ? 0 : Tokens.space8

    readonly property real textLeft: mark.plain ? 0 : mark.inset + icon.width + Tokens.space8

    implicitWidth: mark.textLeft + Math.ceil(text.implicitWidth) + mark.inset
    implicitHeight: Math.max(icon.height, text.height) + mark.inset
    radius: Tokens.radiusPaper
    color: "transparent"
    border.width: mark.plain ? 0 : Tokens.lineControl
    border.color: Tokens.stop
    Accessible.role: Accessible.StaticText
    Accessible.name: mark.word

    Punch {
        id: icon
        x: mark.inset
        anchors.verticalCenter: parent.verticalCenter
        visible: !mark.plain
        kind: "look"
        hole: "transparent"
        diameter: Math.round(16 * Math.min(1.5, Tokens.factor))
    }
    StepText {
        id: text
        x: mark.textLeft
        anchors.verticalCenter: parent.verticalCenter
        width: Math.min(Math.ceil(implicitWidth), mark.width - mark.textLeft - mark.inset)
        step: Tokens.label
        weight: Font.Bold
        color: Tokens.stop
        text: mark.word
        Accessible.ignored: true
    }
}
