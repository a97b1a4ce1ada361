import QtQuick
import Burrow.Components

// The head of a place: its title, a line under it, and what could not be done, if anything.
Column {
    id: head

    required property string title
    property string sub
    property string trouble
    property bool demo: false

    signal dismissed

    topPadding: Tokens.space24
    bottomPadding: Tokens.space8
    spacing: Tokens.space4

    Heading {
        width: parent.width
        text: head.title
    }
    StepText {
        width: parent.width
        visible: head.sub !== ""
        step: Tokens.reason
        color: Tokens.inkSoft
        text: head.sub
    }
    StepText {
        width: parent.width
        visible: head.demo
        step: Tokens.reason
        color: Tokens.est
        text: qsTr("An invented room to look around in. Nothing here is real.")
    }
    TroubleSlot {
        width: parent.width
        trouble: head.trouble
        onDismissed: head.dismissed()
    }
}
