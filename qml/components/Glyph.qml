import QtQuick
import Burrow.Components

// A line icon by `name` (the files of assets/icons), in one `color`. Decoration: the word beside it
// is what a screen reader says.
GlyphShape {
    color: Tokens.ink
    implicitWidth: Tokens.icon
    implicitHeight: Tokens.icon
    Accessible.ignored: true
}
