import QtQuick
import Burrow.Components

// A place whose capability is still to come, and that says so.
ScrollPage {
    id: page

    required property Kit kit
    property string sentence
    property string detail

    EmptyStrip {
        width: parent.width
        drawing: "line"
        sentence: page.sentence
        detail: page.detail
    }
}
