import QtQuick
import Burrow.Components

// Something that went well: a check and `text`.
Item {
    id: line

    property string text

    implicitHeight: words.height
    Accessible.role: Accessible.StaticText
    Accessible.name: line.text

    Glyph {
        id: mark
        y: Math.round((Tokens.reasonStrong.lineHeight - height) / 2)
        name: "check"
        color: Tokens.ok
    }
    StepText {
        id: words
        anchors.left: mark.right
        anchors.leftMargin: Tokens.space8
        anchors.right: parent.right
        step: Tokens.reasonStrong
        color: Tokens.ok
        text: line.text
        Accessible.ignored: true
    }
}
