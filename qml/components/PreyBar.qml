import QtQuick

// One bar of the prey gauge: `length` in dp, with its words beside it.
Item {
    id: bar

    required property real length
    required property string text
    property color textColor: Tokens.ink
    property bool outlined: false

    readonly property alias textWidth: words.implicitWidth

    implicitHeight: Math.max(Tokens.label.lineHeight, words.height)

    Rectangle {
        width: Math.round(bar.length)
        height: 13
        y: Math.round((Tokens.label.lineHeight - height) / 2)
        color: bar.outlined ? "transparent" : Tokens.act
        border.width: bar.outlined ? Tokens.lineControl : 0
        border.color: Tokens.ink
    }
    StepText {
        id: words
        x: Math.round(bar.length) + Tokens.space8
        width: bar.width - x
        step: Tokens.label
        weight: bar.outlined ? Font.Normal : Font.DemiBold
        color: bar.textColor
        text: bar.text
    }
}
