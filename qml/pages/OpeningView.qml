pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components

// While the book is opened: outlines of strips, shown only when it takes longer than a blink.
PageFrame {
    id: view

    required property Kit kit

    Column {
        x: view.contentX
        y: Tokens.space48
        width: view.contentWidth
        spacing: Tokens.betweenStrips

        Repeater {
            model: 5

            WaitStrip {
                width: parent.width
                waiting: view.visible
                sentence: qsTr("Opening the book")
            }
        }
    }
}
