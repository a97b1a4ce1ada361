import QtQuick
import Burrow.Components
import Burrow.ViewModels

// What is to be done at this tub, and why; holding back as a heading of its own.
Column {
    id: reason

    required property RoundModel round

    readonly property bool holding: reason.round.task === RoundModel.Hold

    spacing: Tokens.space4

    StepText {
        width: parent.width
        visible: reason.holding
        step: Tokens.heading
        text: reason.round.verb
        Accessible.role: Accessible.Heading
    }
    ReasonText {
        width: parent.width
        verb: reason.holding ? "" : reason.round.verb
        reason: reason.round.reason
    }
    StepText {
        width: parent.width
        visible: reason.round.advice !== ""
        step: Tokens.reason
        color: Tokens.inkSoft
        text: reason.round.advice
    }
}
