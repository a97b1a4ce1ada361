import QtQuick
import Burrow.Components

// A species in a list: its valid name, its names in the trade, and how many are kept. Emits activated().
PressArea {
    id: row

    required property string name
    required property string tradeNames
    required property string note

    text: row.name
    Accessible.name: row.name
    Accessible.description: row.note
    implicitHeight: Math.max(Tokens.target, words.height + topPadding + bottomPadding)
    leftPadding: Tokens.stripPadding
    rightPadding: Tokens.rowPadding
    topPadding: Tokens.space12
    bottomPadding: Tokens.space12
    corner: Tokens.radiusPaper

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
            spacing: 2

            Latin {
                width: parent.width
                text: row.name
                Accessible.ignored: true
            }
            StepText {
                width: parent.width
                visible: text !== ""
                step: Tokens.reason
                text: row.tradeNames
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
