import QtQuick
import Burrow.Components

// The name of the room as a title that opens the room's own page.
PressArea {
    id: button

    required property string name
    property string note

    text: button.name
    Accessible.name: qsTr("%1. The room and its files").arg(button.name)
    Accessible.description: button.note
    implicitHeight: Math.max(Tokens.target, words.height + 2 * Tokens.space4)
    padding: 0
    topPadding: Tokens.space4

    Item {
        x: button.leftPadding
        y: button.topPadding
        width: button.availableWidth
        height: button.availableHeight

        Column {
            id: words
            anchors.left: parent.left
            anchors.right: mark.left
            anchors.rightMargin: Tokens.space8

            StepText {
                width: parent.width
                step: Tokens.title
                text: button.name
                Accessible.ignored: true
            }
            StepText {
                width: parent.width
                visible: button.note !== ""
                step: Tokens.reason
                color: Tokens.inkSoft
                text: button.note
                Accessible.ignored: true
            }
        }
        Glyph {
            id: mark
            anchors.right: parent.right
            y: Math.round((Tokens.title.lineHeight - height) / 2)
            name: "room"
            color: Tokens.act
        }
    }
    background: null
}
