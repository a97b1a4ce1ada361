import QtQuick
import Burrow.Components

// Diagonal hatch over its whole area: what is held back. `corner` rounds the left corners.
HatchShape {
    color: Tokens.hatch
    Accessible.ignored: true
}
