import QtQuick
import Burrow.Components

// One entry of a history: when, what, and what there is to it. Emits activated().
PressArea {
    id: row

    required property string day
    required property string title
    property string detail
    property string note
    property string glyph

    implicitHeight: Math.max(Tokens.buttonHeight, words.height + topPadding + bottomPadding)
    leftPadding: Tokens.rowPadding
    rightPadding: Tokens.rowPadding
    topPadding: 10
    bottomPadding: 10
    corner: Tokens.radiusPaper
    text: row.title
    Accessible.name: row.day + ", " + row.title + (row.detail === "" ? "" : ", " + row.detail)
                     + (row.note === "" ? "" : ", " + row.note)

    Item {
        x: row.leftPadding
        y: row.topPadding
        width: row.availableWidth
        height: row.availableHeight

        Glyph {
            id: icon
            y: Math.round(when.y + when.height + (Tokens.bodyStrong.lineHeight - height) / 2)
            name: row.glyph
            color: Tokens.inkSoft
        }
        Column {
            id: words
            anchors.left: icon.right
            anchors.leftMargin: Tokens.space12
            anchors.right: parent.right

            StepText {
                id: when
                width: parent.width
                step: Tokens.label
                weight: Font.Normal
                color: Tokens.inkSoft
                text: row.day
                Accessible.ignored: true
            }
            StepText {
                width: parent.width
                step: Tokens.bodyStrong
                text: row.title
                Accessible.ignored: true
            }
            StepText {
                width: parent.width
                visible: text !== ""
                step: Tokens.reason
                text: row.detail
                Accessible.ignored: true
            }
            StepText {
                width: parent.width
                visible: text !== ""
                step: Tokens.reason
                color: Tokens.inkSoft
                text: row.note
                Accessible.ignored: true
            }
        }
    }
    background: StripGround {
        pressed: row.down
    }
}
