pragma ComponentBehavior: Bound
import QtQuick
import QtQuick.Layouts

// One of a few: tiles with a word and a smaller word, filled and checked when chosen. `options` is
// [{word, sub}], `current` the chosen index (-1: none yet), `name` what is asked. Arrow keys move
// between tiles. Emits chosen(index). Tiles stand one below the other at large text.
GridLayout {
    id: tiles

    required property var options
    property int current: -1
    property string name

    signal chosen(int index)

    columns: Tokens.roundCompact ? 1 : Math.min(3, Math.max(1, tiles.options.length))
    columnSpacing: Tokens.betweenTargets
    rowSpacing: Tokens.betweenTargets
    Accessible.role: Accessible.Grouping
    Accessible.name: tiles.name

    Repeater {
        id: repeater

        function step(from: int, by: int) {
            const next = repeater.itemAt(from + by) as PressArea;
            if (next !== null)
                next.forceActiveFocus(Qt.TabFocusReason);
        }

        model: tiles.options

        PressArea {
            id: tile

            required property int index
            required property var modelData

            readonly property bool on: tiles.current === tile.index
            readonly property color tone: tile.on ? Tokens.actInk : Tokens.ink

            Layout.fillWidth: true
            Layout.fillHeight: true
            Layout.preferredWidth: 1
            implicitHeight: Math.max(68, words.height + topPadding + bottomPadding)
            padding: Tokens.space8
            text: tile.modelData.word
            Accessible.role: Accessible.RadioButton
            Accessible.checked: tile.on
            Accessible.name: tile.modelData.sub ? tile.text + " " + tile.modelData.sub : tile.text
            onActivated: tiles.chosen(tile.index)
            Keys.onRightPressed: repeater.step(tile.index, 1)
            Keys.onDownPressed: repeater.step(tile.index, 1)
            Keys.onLeftPressed: repeater.step(tile.index, -1)
            Keys.onUpPressed: repeater.step(tile.index, -1)

            Column {
                id: words
                anchors.centerIn: parent
                width: tile.availableWidth

                ButtonLabel {
                    width: parent.width
                    step: Tokens.bodyStrong
                    text: tile.text
                    glyph: tile.on ? "check" : ""
                    color: tile.tone
                }
                StepText {
                    width: parent.width
                    horizontalAlignment: Text.AlignHCenter
                    step: Tokens.reason
                    text: tile.modelData.sub ?? ""
                    visible: text !== ""
                    color: tile.on ? Tokens.actInk : Tokens.inkSoft
                    Accessible.ignored: true
                }
            }
            background: Rectangle {
                radius: Tokens.radiusControl
                color: tile.on ? Tokens.act : tile.down ? Tokens.pressed : Tokens.raised
                border.width: tile.on ? 0 : Tokens.lineControl
                border.color: Tokens.edge
            }
        }
    }
}
