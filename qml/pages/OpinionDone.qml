import QtQuick
import Burrow.Components

// What became of a question or an answer.
Column {
    id: done

    required property string doneText
    required property string trouble

    spacing: Tokens.betweenStrips

    MessageStrip {
        width: parent.width
        visible: done.doneText !== ""
        tone: "ok"
        happened: done.doneText
    }
    MessageStrip {
        width: parent.width
        visible: done.trouble !== ""
        tone: "stop"
        happened: done.trouble
    }
}
