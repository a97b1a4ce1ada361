import QtQuick
import Burrow.Components
import Burrow.ViewModels

// A day, a step back or forth at a time: for what happened today or lately.
Strip {
    id: row

    required property string name
    required property DayEntry day

    Item {
        width: parent.width
        height: Math.max(Tokens.shelfTarget, words.height)

        Column {
            id: words
            anchors.left: parent.left
            anchors.right: earlier.left
            anchors.rightMargin: Tokens.space12
            anchors.verticalCenter: parent.verticalCenter

            StepText {
                width: parent.width
                step: Tokens.reason
                color: Tokens.inkSoft
                text: row.name
            }
            StepText {
                width: parent.width
                step: Tokens.bodyStrong
                text: row.day.glance
            }
        }
        SquareButton {
            id: earlier
            anchors.right: later.left
            anchors.rightMargin: Tokens.betweenTargets
            anchors.verticalCenter: parent.verticalCenter
            glyph: "minus"
            text: qsTr("A day earlier")
            onActivated: row.day.step(DayEntry.Day, -1)
        }
        SquareButton {
            id: later
            anchors.right: parent.right
            anchors.verticalCenter: parent.verticalCenter
            glyph: "plus"
            text: qsTr("A day later")
            enabled: row.day.canLater
            onActivated: row.day.step(DayEntry.Day, 1)
        }
    }
}
