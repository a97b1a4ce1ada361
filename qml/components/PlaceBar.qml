pragma ComponentBehavior: Bound
import QtQuick

// The bottom bar of a place: four places around the scan disc, mirrored for the left hand.
// `places` is [{word, glyph}] of four, `current` the one shown, `scanText` the disc's word.
// Emits chosen(index) and scanned().
Rectangle {
    id: bar

    required property list<var> places
    property int current: 0
    required property string scanText

    readonly property real pitch: Math.min(120, bar.width / 5)

    signal chosen(int index)
    signal scanned

    implicitWidth: 412
    implicitHeight: Tokens.barHeight
    color: Tokens.raised

    Rectangle {
        width: parent.width
        height: Tokens.lineControl
        color: Tokens.barEdge
    }
    Item {
        id: columns

        // Four places in five columns; the disc has the middle one.
        function columnOf(index: int): int {
            const column = index < 2 ? index : index + 1;
            return Tokens.leftHanded ? 4 - column : column;
        }

        anchors.horizontalCenter: parent.horizontalCenter
        width: 5 * bar.pitch
        height: parent.height

        Repeater {
            model: bar.places

            BarButton {
                id: place

                required property int index
                required property var modelData

                objectName: "place " + place.index
                x: columns.columnOf(place.index) * bar.pitch
                y: Tokens.space4
                width: bar.pitch
                height: bar.height - Tokens.space8
                text: place.modelData.word
                glyph: place.modelData.glyph
                active: bar.current === place.index
                tone: place.active ? Tokens.act : Tokens.inkSoft
                Accessible.role: Accessible.PageTab
                Accessible.selected: place.active
                onActivated: bar.chosen(place.index)

                Rectangle {
                    anchors.horizontalCenter: parent.horizontalCenter
                    y: -Tokens.space4
                    width: 36
                    height: 4
                    radius: 2
                    color: Tokens.act
                    visible: place.active
                }
            }
        }
        PressArea {
            id: disc
            anchors.horizontalCenter: parent.horizontalCenter
            y: -20
            width: 72
            height: 72
            corner: 36
            text: bar.scanText
            onActivated: bar.scanned()

            contentItem: Item {
                Glyph {
                    anchors.centerIn: parent
                    width: 38
                    height: 38
                    name: "scan"
                    color: Tokens.actInk
                }
            }
            background: Rectangle {
                radius: 36
                color: disc.down ? Tokens.actPressed : Tokens.act

                Rectangle {
                    anchors.fill: parent
                    anchors.margins: -5
                    z: -1
                    radius: 41
                    color: Tokens.ground
                }
            }
        }
        StepText {
            anchors.horizontalCenter: parent.horizontalCenter
            y: bar.height - 31
            step: Tokens.barLabel
            text: bar.scanText
            weight: Font.Bold
            Accessible.ignored: true
        }
    }
}
