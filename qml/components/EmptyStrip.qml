import QtQuick
import Burrow.Components

// An empty screen: what is missing drawn in dashes (`drawing`: "label", "line" or "shelf"), one
// sentence, a `detail`, and one main action (`actionText`, `actionGlyph`, emits acted()).
Column {
    id: empty

    property string drawing: "label"
    required property string sentence
    property string detail
    property string actionText
    property string actionGlyph

    signal acted

    Item {
        width: parent.width
        height: empty.drawing === "label" ? 292 : empty.drawing === "line" ? 120 : 132

        StripGround {
            anchors.fill: parent
        }
        BlankShape {
            anchors.fill: parent
            kind: empty.drawing
            ink: Tokens.ink
            edge: Tokens.edge
            rule: Tokens.rule
            hole: Tokens.ground
            Accessible.ignored: true
        }
    }
    Item {
        width: 1
        height: Tokens.space24
    }
    Heading {
        width: parent.width
        level: empty.drawing === "label" ? 1 : 2
        text: empty.sentence
    }
    StepText {
        width: parent.width
        visible: empty.detail !== ""
        topPadding: step.above + Tokens.space8
        step: Tokens.body
        color: Tokens.inkSoft
        text: empty.detail
    }
    Item {
        width: 1
        height: Tokens.space32
        visible: empty.actionText !== ""
    }
    ActionButton {
        width: parent.width
        visible: empty.actionText !== ""
        tall: empty.drawing === "label"
        text: empty.actionText
        glyph: empty.actionGlyph
        onActivated: empty.acted()
    }
}
