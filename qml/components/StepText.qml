import QtQuick
import Burrow.Components

// Text in one step of the type scale (`step`): plain text, wrapped, never cut. Its lines have the
// step's height and the glyphs stand in the middle of them. `weight` may differ from the step's;
// never set `font.weight`, which would undo the step.
Text {
    id: text

    required property TypeStep step
    property int weight: text.step.weight

    font: text.weight === text.step.weight ? text.step.font : Qt.font({
        family: text.step.family,
        pixelSize: text.step.pixels,
        weight: text.weight,
        italic: text.step.italic
    })
    color: Tokens.ink
    textFormat: Text.PlainText
    wrapMode: Text.Wrap
    lineHeightMode: Text.FixedHeight
    lineHeight: text.step.lineHeight
    topPadding: text.step.above
    bottomPadding: Math.min(0, text.step.lead) - text.step.above
}
