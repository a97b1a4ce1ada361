pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components

// Kinds of things that may have happened, as tiles under a heading. Emits chosen(kind).
Column {
    id: group

    required property string name
    required property list<var> tiles

    signal chosen(string kind)

    SectionHead {
        width: parent.width
        name: group.name
    }
    OutcomeGrid {
        width: parent.width

        Repeater {
            model: group.tiles

            OutcomeButton {
                required property var modelData

                text: modelData.text
                glyph: modelData.glyph
                onActivated: group.chosen(modelData.kind)
            }
        }
    }
}
