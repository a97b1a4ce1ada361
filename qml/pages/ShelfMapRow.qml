import QtQuick
import Burrow.Components

// One shelf on the map of the room: its name, a hole for every tub, and what is asked there. Emits
// activated().
PressArea {
    id: row

    required property string name
    property string note
    property alias holes: holes.holes

    implicitHeight: Math.max(Tokens.buttonHeight, words.height + topPadding + bottomPadding)
    leftPadding: Tokens.stripPadding
    rightPadding: Tokens.rowPadding
    topPadding: 10
    bottomPadding: 10
    corner: Tokens.radiusPaper
    text: row.name
    Accessible.name: row.name + ", " + row.note
    Accessible.description: qsTr("Opens the shelf.")

    Item {
        x: row.leftPadding
        y: row.topPadding
        width: row.availableWidth
        height: row.availableHeight

        Column {
            id: words
            anchors.left: parent.left
            anchors.right: mark.left
            anchors.rightMargin: Tokens.space8
            anchors.verticalCenter: parent.verticalCenter

            StepText {
                width: parent.width
                step: Tokens.bodyStrong
                text: row.name
                Accessible.ignored: true
            }
            RoundHoles {
                id: holes
                width: parent.width
                height: 20
                largest: 6
                widest: 20
                Accessible.ignored: true
            }
            StepText {
                width: parent.width
                step: Tokens.reason
                color: Tokens.inkSoft
                text: row.note
                Accessible.ignored: true
            }
        }
        Glyph {
            id: mark
            anchors.right: parent.right
            anchors.verticalCenter: parent.verticalCenter
            name: "chevron"
            color: Tokens.act
        }
    }
    background: StripGround {
        pressed: row.down
    }
}
