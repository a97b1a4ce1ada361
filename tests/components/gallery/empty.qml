import QtQuick
import Burrow.Components

Sheet {
    spacing: 24

    EmptyStrip {
        width: parent.width
        sentence: "Tag your first tub"
        detail: "Give it a number and a species. The line under the label fills in as it feeds and moults."
        actionText: "Tag an animal"
        actionGlyph: "plus"
    }
    EmptyStrip {
        width: parent.width
        drawing: "line"
        sentence: "One moult is enough to start this line"
    }
    EmptyStrip {
        width: parent.width
        drawing: "shelf"
        sentence: "Nothing due until Sunday"
        detail: "Everything that is due today is logged."
    }
}
