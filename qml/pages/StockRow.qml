import QtQuick
import Burrow.Components

// Feeders of one size, counted: minus and plus change the count by one, the words open more. Emits
// stepped(by) and opened().
Strip {
    id: row

    required property string name
    required property string count
    property string sub
    property bool estimated: false

    signal stepped(int by)
    signal opened

    Item {
        width: parent.width
        height: Math.max(Tokens.shelfTarget, words.height)

        PressArea {
            anchors.fill: words
            corner: Tokens.radiusPaper
            text: row.name
            Accessible.name: row.name + ", " + row.count + (row.sub === "" ? "" : ", " + row.sub)
            background: null
            onActivated: row.opened()
        }
        Column {
            id: words
            anchors.left: parent.left
            anchors.right: less.left
            anchors.rightMargin: Tokens.space12
            anchors.verticalCenter: parent.verticalCenter

            StepText {
                width: parent.width
                step: Tokens.reasonStrong
                text: row.name
                Accessible.ignored: true
            }
            MeasureText {
                width: parent.width
                color: row.estimated ? Tokens.est : Tokens.ink
                text: row.count
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
        SquareButton {
            id: less
            anchors.right: more.left
            anchors.rightMargin: Tokens.betweenTargets
            anchors.verticalCenter: parent.verticalCenter
            glyph: "minus"
            text: qsTr("%1: one less").arg(row.name)
            enabled: row.count !== "0"
            onActivated: row.stepped(-1)
        }
        SquareButton {
            id: more
            anchors.right: parent.right
            anchors.verticalCenter: parent.verticalCenter
            glyph: "plus"
            text: qsTr("%1: one more").arg(row.name)
            onActivated: row.stepped(1)
        }
    }
}
