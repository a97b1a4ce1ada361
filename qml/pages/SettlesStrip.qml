import QtQuick
import Burrow.Components

// Something that would settle the sex, and how far it would go. One that waits in the book can be opened:
// emits moultWanted(moult).
Item {
    id: settles

    required property string what
    property string range
    property string moult

    signal moultWanted(string moult)

    implicitHeight: settles.moult === "" ? words.height : way.height

    Strip {
        id: words
        width: parent.width
        visible: settles.moult === ""

        StepText {
            width: parent.width
            step: Tokens.bodyStrong
            text: settles.what
        }
        StepText {
            width: parent.width
            visible: settles.range !== ""
            step: Tokens.reason
            color: Tokens.inkSoft
            text: settles.range
        }
    }
    WayRow {
        id: way
        width: parent.width
        visible: settles.moult !== ""
        glyph: "look"
        text: settles.what
        sub: settles.range
        onActivated: settles.moultWanted(settles.moult)
    }
}
