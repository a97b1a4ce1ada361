import QtQuick

// A button: `text`, optional `glyph`, and `kind` "primary" (the one main action), "secondary" or
// "plain" (a word alone). While `busy` it shows `busyText` and does not answer. Emits activated().
// `tall` makes the single action of an empty screen.
PressArea {
    id: button

    property string kind: "primary"
    property string glyph
    property bool busy: false
    property string busyText
    property bool tall: false

    readonly property bool filled: button.kind === "primary" && button.enabled
    readonly property bool plain: button.kind === "plain"
    readonly property string word: button.busy && button.busyText !== "" ? button.busyText
                                                                         : button.text
    readonly property real least: button.tall ? 84 : button.plain ? Tokens.target
                                                                  : Tokens.buttonHeight

    implicitHeight: Math.max(button.least, implicitContentHeight + topPadding + bottomPadding)
    padding: Tokens.space12
    topPadding: Tokens.space8
    bottomPadding: Tokens.space8
    enabled: !button.busy
    Accessible.name: button.word

    contentItem: ButtonLabel {
        step: button.tall ? Tokens.heading : Tokens.action
        text: button.word
        glyph: button.glyph
        color: {
            if (button.filled)
                return Tokens.actInk;
            if (!button.enabled)
                return Tokens.inkSoft;
            return button.plain ? Tokens.act : Tokens.ink;
        }
    }
    background: Rectangle {
        radius: button.tall ? Tokens.radiusSlab : Tokens.radiusControl
        color: {
            if (button.filled)
                return button.down ? Tokens.actPressed : Tokens.act;
            if (button.plain)
                return button.down ? Tokens.raised : "transparent";
            return button.down ? Tokens.pressed : Tokens.raised;
        }
        border.width: button.filled || button.plain ? 0 : Tokens.lineControl
        border.color: Tokens.edge
    }
}
