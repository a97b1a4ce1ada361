pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// A small mat with the corners that the camera sees, and what to do so that all of it can be measured.
Strip {
    id: strip

    required property MatHintModel hint

    visible: strip.hint.text !== ""
    bar: strip.hint.good ? Tokens.ok : "transparent"
    padding: Tokens.space8
    Accessible.role: Accessible.StaticText
    Accessible.name: strip.hint.text

    Item {
        width: parent.width
        height: Math.max(mat.height, words.height)

        Rectangle {
            id: mat
            anchors.verticalCenter: parent.verticalCenter
            width: 30
            height: 42
            color: "transparent"
            border.width: Tokens.lineHairline
            border.color: Tokens.edge

            Corner {
                at: 0
                anchors.left: parent.left
                anchors.top: parent.top
            }
            Corner {
                at: 1
                anchors.right: parent.right
                anchors.top: parent.top
            }
            Corner {
                at: 2
                anchors.right: parent.right
                anchors.bottom: parent.bottom
            }
            Corner {
                at: 3
                anchors.left: parent.left
                anchors.bottom: parent.bottom
            }
        }
        StepText {
            id: words
            anchors.left: mat.right
            anchors.leftMargin: Tokens.space12
            anchors.right: parent.right
            anchors.verticalCenter: parent.verticalCenter
            step: Tokens.bodyStrong
            color: strip.hint.good ? Tokens.ok : Tokens.ink
            text: strip.hint.text
            Accessible.ignored: true
        }
    }

    component Corner: Rectangle {
        id: corner

        property int at: 0

        anchors.margins: 3
        width: 9
        height: 9
        color: (strip.hint.corners[corner.at] ?? false) ? Tokens.ok : "transparent"
        border.width: Tokens.lineControl
        border.color: (strip.hint.corners[corner.at] ?? false) ? Tokens.ok : Tokens.edge
    }
}
