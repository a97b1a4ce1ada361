import QtQuick
import Burrow.Components
import Burrow.ViewModels

// One difference between two books: what was said on either side, which of it counts, and where the
// other goes.
Strip {
    id: card

    required property DifferencesModel model

    bar: Tokens.warn
    spacing: Tokens.space12

    Item {
        width: parent.width
        height: Math.max(heading.height, place.height)

        Glyph {
            id: mark
            y: Math.round((Tokens.heading.lineHeight - height) / 2)
            name: "caution"
            color: Tokens.warn
        }
        StepText {
            id: heading
            anchors.left: mark.right
            anchors.leftMargin: 10
            anchors.right: place.left
            anchors.rightMargin: Tokens.space8
            step: Tokens.heading
            color: Tokens.warn
            text: card.model.summary
            Accessible.role: Accessible.Heading
        }
        StepText {
            id: place
            anchors.right: parent.right
            topPadding: step.above + 2
            step: Tokens.measure
            color: Tokens.inkSoft
            text: card.model.position
        }
    }
    StepText {
        width: parent.width
        visible: card.model.tag !== ""
        step: Tokens.measure
        text: card.model.tag
    }
    StepText {
        width: parent.width
        step: Tokens.body
        text: card.model.title
    }
    ChoiceTiles {
        width: parent.width
        name: card.model.title
        options: card.model.choices
        current: card.model.choice
        onChosen: index => card.model.choice = index
    }
    StepText {
        width: parent.width
        visible: card.model.stays !== ""
        step: Tokens.reason
        color: Tokens.inkSoft
        text: card.model.stays
    }
    ActionButton {
        width: parent.width
        kind: "secondary"
        glyph: "check"
        text: qsTr("Settle it like this")
        onActivated: card.model.settle()
    }
    ActionButton {
        width: parent.width
        visible: card.model.count > 1
        kind: "plain"
        text: qsTr("Next difference")
        onActivated: card.model.next()
    }
}
