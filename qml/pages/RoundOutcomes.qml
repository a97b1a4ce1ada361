pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// The other outcomes, two by two. At large text only the first one stays, and the rest open as a list.
OutcomeGrid {
    id: grid

    required property RoundModel round

    readonly property list<var> shown: Tokens.roundCompact && grid.round.outcomes.length > 0 ? [grid.round.outcomes[0], {
            "action": "other",
            "text": qsTr("Something else"),
            "glyph": "more"
        }] : grid.round.outcomes

    Repeater {
        model: grid.shown

        OutcomeButton {
            id: outcome

            required property var modelData

            text: outcome.modelData.text
            glyph: outcome.modelData.glyph
            onActivated: grid.round.doOutcome(outcome.modelData.action)
        }
    }
}
