import QtQuick
import Burrow.Components

// How one kind of care stands: its name, the verdict as a word and a shape, and the reason. Emits
// activated() to open or close its working.
PressArea {
    id: row

    required property string name
    required property string stateWord
    required property string punch
    required property string reason
    property bool due: false
    property bool held: false
    property bool open: false

    text: row.name
    Accessible.name: row.name + ". " + row.stateWord + ". " + row.reason
    Accessible.description: row.open ? qsTr("Its working is shown") : qsTr("Shows its working")
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

        Punch {
            id: shape
            y: 2
            visible: row.punch !== ""
            kind: row.punch === "" ? "none" : row.punch
        }
        Column {
            id: words
            anchors.left: parent.left
            anchors.leftMargin: shape.width + Tokens.space12
            anchors.right: mark.left
            anchors.rightMargin: Tokens.space8
            spacing: 2

            StepText {
                width: parent.width
                step: Tokens.reason
                color: Tokens.inkSoft
                text: row.name
                Accessible.ignored: true
            }
            StepText {
                width: parent.width
                step: Tokens.bodyStrong
                color: row.due ? Tokens.act : Tokens.ink
                text: row.stateWord
                Accessible.ignored: true
            }
            StepText {
                width: parent.width
                step: Tokens.reason
                color: Tokens.inkSoft
                text: row.reason
                Accessible.ignored: true
            }
        }
        Glyph {
            id: mark
            anchors.right: parent.right
            anchors.verticalCenter: parent.verticalCenter
            name: row.open ? "chevron-up" : "chevron-down"
            color: Tokens.act
        }
    }
    background: StripGround {
        pressed: row.down
        held: row.held
    }
}
