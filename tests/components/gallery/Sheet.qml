import QtQuick
import Burrow.Components

// A page of the gallery: components one below the other on the ground.
Rectangle {
    id: sheet

    default property alias content: column.data
    property alias spacing: column.spacing
    property real margin: 16

    implicitWidth: 412
    implicitHeight: column.height + 32
    color: Tokens.ground

    Column {
        id: column
        x: sheet.margin
        y: 16
        width: sheet.width - 2 * sheet.margin
        spacing: 12
    }
}
