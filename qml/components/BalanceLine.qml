pragma ComponentBehavior: Bound
import QtQuick

// Where something stands between two ends: `low` and `high` name them, `middle` what lies between. A ring
// marks `before` and a disc `after`, both from 0 to 1, and the way from one to the other is drawn.
// `description` says it for a screen reader.
Item {
    id: line

    required property real before
    required property real after
    property string low
    property string middle
    property string high
    property string description

    readonly property real inset: 8
    readonly property real span: line.width - 2 * line.inset

    function xOf(share: real): real {
        return line.inset + Math.max(0, Math.min(1, share)) * line.span;
    }

    implicitWidth: 344
    implicitHeight: 28 + Math.max(lowWord.height, middleWord.visible ? middleWord.height : 0)
    Accessible.role: Accessible.StaticText
    Accessible.name: line.description

    Rectangle {
        x: line.inset
        y: 13
        width: line.span
        height: 2
        color: Tokens.edge
    }
    Repeater {
        model: 3

        Rectangle {
            id: tick

            required property int index

            x: Math.round(line.xOf(tick.index / 2)) - 1
            y: 8
            width: 2
            height: 12
            color: Tokens.edge
        }
    }
    Rectangle {
        x: Math.min(line.xOf(line.before), line.xOf(line.after))
        y: 12
        width: Math.abs(line.xOf(line.after) - line.xOf(line.before))
        height: 4
        color: Tokens.ink
    }
    Rectangle {
        x: line.xOf(line.before) - width / 2
        y: 14 - height / 2
        width: 14
        height: 14
        radius: 7
        color: Tokens.strip
        border.width: Tokens.lineData
        border.color: Tokens.ink
    }
    Rectangle {
        x: line.xOf(line.after) - width / 2
        y: 14 - height / 2
        width: 16
        height: 16
        radius: 8
        color: Tokens.ink
    }
    StepText {
        id: lowWord
        y: 28
        step: Tokens.label
        weight: Font.Normal
        color: Tokens.inkSoft
        text: line.low
        Accessible.ignored: true
    }
    StepText {
        id: middleWord
        y: 28
        x: Math.round((line.width - width) / 2)
        visible: x > lowWord.width + Tokens.space8 && x + width + Tokens.space8 < highWord.x
        step: Tokens.label
        weight: Font.Normal
        color: Tokens.inkSoft
        text: line.middle
        Accessible.ignored: true
    }
    StepText {
        id: highWord
        y: 28
        x: line.width - width
        step: Tokens.label
        weight: Font.Normal
        color: Tokens.inkSoft
        text: line.high
        Accessible.ignored: true
    }
}
