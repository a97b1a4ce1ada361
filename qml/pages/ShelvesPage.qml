import QtQuick
import Burrow.Components

// Everyone, by shelf.
ScrollPage {
    id: page

    required property Kit kit

    title: qsTr("Shelves")
}
