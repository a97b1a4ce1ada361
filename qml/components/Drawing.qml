import QtQuick
import Burrow.Components

// A schematic drawing by `name` (the files of assets/drawings) in the theme's colours, as wide as it is
// given and as tall as that makes it. `description` says it for a screen reader.
DrawingShape {
    id: drawing

    property string description

    implicitWidth: 344
    implicitHeight: Math.round(drawing.width * drawing.ratio)
    ink: Tokens.ink
    paper: Tokens.strip
    accent: Tokens.act
    Accessible.role: Accessible.Graphic
    Accessible.name: drawing.description
    Accessible.ignored: drawing.description === ""
}
