import QtQuick
import Burrow.Components

ScrollPage {
    implicitHeight: 640
    title: "Make a file"
    sub: "For another Burrowbook phone, or to keep"

    Repeater {
        model: 9

        PickRow {
            required property int index

            width: parent.width
            name: "Row %1".arg(index + 1)
            value: "Something to open"
        }
    }

    lower: [
        Slab {
            width: parent.width
            text: "Took it"
            sub: "then scan the next tub"
        }
    ]
    bar: [
        ContextBar {
            width: parent.width
            backText: "Back"
            mainText: "Hand over"
            mainGlyph: "send"
            helperText: "Keep"
            helperGlyph: "sheet"
        }
    ]
}
