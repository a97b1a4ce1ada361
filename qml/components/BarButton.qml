import QtQuick

// An icon (in `tone`) over a word in a bottom bar. `active` marks the place one is at. Emits
// activated().
PressArea {
    id: button

    required property string glyph
    property bool active: false
    property color tone: button.active ? Tokens.act : Tokens.ink

    implicitWidth: Math.max(Tokens.shelfTarget, word.implicitWidth + 2 * Tokens.space4)
    implicitHeight: Tokens.buttonHeight

    Glyph {
        anchors.horizontalCenter: parent.horizontalCenter
        anchors.bottom: word.top
        anchors.bottomMargin: 5
        width: 28
        height: 28
        name: button.glyph
        color: button.tone
    }
    StepText {
        id: word
        anchors.horizontalCenter: parent.horizontalCenter
        y: Math.round(parent.height / 2 + 6)
        step: Tokens.barLabel
        text: button.text
        color: button.active ? Tokens.act : Tokens.inkSoft
        weight: button.active ? Font.Bold : Font.DemiBold
        wrapMode: Text.NoWrap
        Accessible.ignored: true
    }
    background: Rectangle {
        radius: Tokens.radiusControl
        color: button.down ? Tokens.pressed : "transparent"
    }
}
