import QtQuick
import Burrow.Components

// One rule of thumb: what it says, its value, and where that comes from; `also` holds values for others.
// Emits activated().
PressArea {
    id: row

    required property string says
    required property string value
    required property string from
    required property string source
    property string also
    property bool own: false

    text: row.says
    Accessible.name: row.says + " " + row.value + ", " + row.from
    Accessible.description: row.also === "" ? row.source : row.also
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

            StepText {
                width: parent.width
                step: Tokens.reason
                text: row.says
                Accessible.ignored: true
            }
            StepText {
                width: parent.width
                step: Tokens.bodyStrong
                color: row.own ? Tokens.act : Tokens.ink
                text: row.value
                Accessible.ignored: true
            }
            StepText {
                width: parent.width
                step: Tokens.label
                weight: Font.Normal
                color: Tokens.inkSoft
                text: row.source === "" ? row.from : row.from + ". " + row.source
                Accessible.ignored: true
            }
            StepText {
                width: parent.width
                visible: row.also !== ""
                step: Tokens.label
                color: Tokens.act
                text: row.also
                Accessible.ignored: true
            }
        }
        Glyph {
            id: mark
            anchors.right: parent.right
            anchors.verticalCenter: parent.verticalCenter
            name: "edit"
            color: Tokens.act
        }
    }
    background: StripGround {
        pressed: row.down
    }
}
