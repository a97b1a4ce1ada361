import QtQuick
import Burrow.Components

// The first steps, while there is no book.
ScrollPage {
    id: page

    required property Kit kit

    EmptyStrip {
        width: parent.width
        sentence: qsTr("Tag your first tub")
    }
}
