pragma ComponentBehavior: Bound
import QtQuick

// How sure, in five named stops: `words` from least to most, `current` the chosen index (-1: none
// yet), `name` what is asked. Any stop answers a tap, arrow keys move. Emits chosen(index).
Item {
    id: stops

    required property var words
    property int current: -1
    property string name

    readonly property real pitch: (stops.width - 36) / Math.max(1, stops.words.length - 1)

    signal chosen(int index)

    function xOf(index: int): real {
        return 18 + index * stops.pitch;
    }

    implicitWidth: 344
    implicitHeight: Tokens.target + Math.max(Tokens.label.lineHeight, word.height)
    Accessible.role: Accessible.Grouping
    Accessible.name: stops.name

    Rectangle {
        x: 18
        y: Tokens.target / 2 - 1
        width: stops.width - 36
        height: 2
        color: Tokens.edge
    }
    Rectangle {
        x: 18
        y: Tokens.target / 2 - 2
        width: Math.max(0, stops.current) * stops.pitch
        height: 4
        color: Tokens.act
    }
    Repeater {
        id: repeater

        function step(from: int, by: int) {
            const next = repeater.itemAt(from + by) as PressArea;
            if (next === null)
                return;
            next.forceActiveFocus(Qt.TabFocusReason);
            stops.chosen(from + by);
        }

        model: stops.words

        PressArea {
            id: stop

            required property int index
            required property string modelData

            readonly property bool on: stops.current === stop.index
            readonly property bool filled: stop.index <= stops.current

            objectName: "stop " + stop.index
            x: Math.round(stops.xOf(stop.index) - width / 2)
            width: Math.max(Tokens.target, Math.min(Tokens.shelfTarget, stops.pitch))
            height: Tokens.target
            corner: Tokens.target / 2
            text: stop.modelData
            Accessible.role: Accessible.RadioButton
            Accessible.checked: stop.on
            onActivated: stops.chosen(stop.index)
            Keys.onRightPressed: repeater.step(stop.index, 1)
            Keys.onLeftPressed: repeater.step(stop.index, -1)

            contentItem: Item {
                Rectangle {
                    anchors.centerIn: parent
                    width: stop.on ? 36 : 14
                    height: width
                    radius: width / 2
                    color: stop.filled ? Tokens.act : stop.down ? Tokens.edge : Tokens.strip
                    border.width: stop.filled ? 0 : Tokens.lineControl
                    border.color: Tokens.edge

                    Rectangle {
                        anchors.centerIn: parent
                        visible: stop.on
                        width: 14
                        height: 14
                        radius: 7
                        color: Tokens.actInk
                    }
                }
            }
            background: null
        }
    }
    StepText {
        y: Tokens.target
        visible: stops.current < 0 || word.x > width + Tokens.space8
        step: Tokens.label
        weight: Font.Normal
        color: Tokens.inkSoft
        text: stops.words[0] ?? ""
        Accessible.ignored: true
    }
    StepText {
        y: Tokens.target
        x: stops.width - width
        visible: stops.current < 0 || word.x + word.width + Tokens.space8 < x
        step: Tokens.label
        weight: Font.Normal
        color: Tokens.inkSoft
        text: stops.words[stops.words.length - 1] ?? ""
        Accessible.ignored: true
    }
    StepText {
        id: word
        y: Tokens.target

        readonly property real centred: stops.xOf(stops.current) - width / 2

        x: Math.round(Math.max(0, Math.min(stops.width - width, word.centred)))
        width: Math.min(implicitWidth, stops.width)
        visible: stops.current >= 0
        step: Tokens.label
        weight: Font.Bold
        text: stops.words[stops.current] ?? ""
        Accessible.ignored: true
    }
}
