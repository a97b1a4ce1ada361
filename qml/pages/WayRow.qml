import QtQuick
import Burrow.Components

// A strip that opens another page: icon, `text`, `sub` and a chevron. Emits activated().
PressArea {
    id: row

    property string sub
    property string glyph
    property string endGlyph: "chevron"

    implicitWidth: 380
    implicitHeight: Math.max(74, words.height + topPadding + bottomPadding)
    leftPadding: Tokens.stripPadding
    rightPadding: Tokens.rowPadding
    topPadding: Tokens.space12
    bottomPadding: Tokens.space12
    corner: Tokens.radiusPaper
    Accessible.description: row.sub

    Item {
        x: row.leftPadding
        y: row.topPadding
        width: row.availableWidth
        height: row.availableHeight

        Glyph {
            id: icon
            anchors.verticalCenter: parent.verticalCenter
            visible: row.glyph !== ""
            name: row.glyph
            color: Tokens.ink
        }
        Column {
            id: words
            anchors.left: parent.left
            anchors.leftMargin: row.glyph === "" ? 0 : icon.width + Tokens.space16
            anchors.right: mark.left
            anchors.rightMargin: Tokens.space8
            anchors.verticalCenter: parent.verticalCenter

            StepText {
                width: parent.width
                step: Tokens.bodyStrong
                text: row.text
                Accessible.ignored: true
            }
            StepText {
                width: parent.width
                visible: row.sub !== ""
                step: Tokens.reason
                color: Tokens.inkSoft
                text: row.sub
                Accessible.ignored: true
            }
        }
        Glyph {
            id: mark
            anchors.right: parent.right
            anchors.verticalCenter: parent.verticalCenter
            name: row.endGlyph
            color: Tokens.act
        }
    }
    background: StripGround {
        pressed: row.down
    }
}
