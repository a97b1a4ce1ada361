import QtQuick
import Burrow.Components

// A QR symbol for another phone to read, black on white in both themes. `modules` holds one byte
// per module, row by row; `quietZone` is in modules. `description` says what it holds.
QrShape {
    id: symbol

    property string description

    implicitWidth: 320
    implicitHeight: 320
    Accessible.role: Accessible.Graphic
    Accessible.name: symbol.description
}
