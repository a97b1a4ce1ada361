import QtQuick
import Burrow.Components
import Burrow.ViewModels

// How far along the round is: its shelf, the count, and a hole for every tub.
Column {
    id: head

    required property RoundModel round
    // No room for the holes.
    property bool small: false

    spacing: Tokens.space8

    Item {
        width: parent.width
        height: Math.max(title.height, progress.height)

        StepText {
            id: title
            width: parent.width - progress.width - Tokens.space12
            step: Tokens.bodyStrong
            text: head.round.title
            Accessible.role: Accessible.Heading
        }
        MeasureText {
            id: progress
            anchors.right: parent.right
            color: Tokens.inkSoft
            text: head.round.progress
        }
    }
    RoundHoles {
        width: parent.width
        visible: !head.small
        holes: head.round.holes
        description: head.round.progress
    }
}
