import QtQuick
import Burrow.Components
import Burrow.ViewModels

// What is to be done at this tub, and why; holding back as a heading of its own.
Column {
    id: reason

    required property RoundModel round

    readonly property bool holding: reason.round.task === RoundModel.Hold

    signal whyWanted

    spacing: Tokens.space4

    StepText {
        width: parent.width
        visible: reason.holding
        step: Tokens.heading
        text: reason.round.verb
        Accessible.role: Accessible.Heading
    }
    Item {
        width: parent.width
        height: Math.max(lead.y + lead.height, why.visible ? why.y + why.height : 0)

        ReasonText {
            id: lead
            y: why.visible && !Tokens.rowsStack ? Math.max(0, Math.round((why.height - height) / 2)) : 0
            width: why.visible && !Tokens.rowsStack ? parent.width - why.width - Tokens.space8
                                                    : parent.width
            verb: reason.holding ? "" : reason.round.verb
            reason: reason.round.reason
        }
        ActionButton {
            id: why
            y: Tokens.rowsStack ? lead.height : 0
            anchors.right: parent.right
            visible: reason.round.subject !== ""
            kind: "plain"
            text: qsTr("Why")
            Accessible.name: qsTr("Why: the working behind it")
            onActivated: reason.whyWanted()
        }
    }
    StepText {
        width: parent.width
        visible: reason.round.advice !== ""
        step: Tokens.reason
        color: Tokens.inkSoft
        text: reason.round.advice
    }
}
