import QtQuick
import Burrow.Components

// A state as a shape cut through the strip. `kind`: "blank", "feed", "hold", "premoult", "group",
// "sac", "look", "done", "sold", "slash", "current" or "none". `tone` follows the kind unless set;
// the size follows `diameter`.
PunchShape {
    id: punch

    property real diameter: Tokens.punch

    implicitWidth: punch.diameter
    implicitHeight: punch.diameter
    hole: Tokens.ground
    tone: {
        switch (punch.kind) {
        case "feed":
        case "group":
        case "current":
            return Tokens.act;
        case "look":
            return Tokens.stop;
        case "hold":
        case "premoult":
            return Tokens.inkSoft;
        case "done":
        case "sold":
            return Tokens.ok;
        case "blank":
            return Tokens.edge;
        default:
            return Tokens.ink;
        }
    }
    Accessible.ignored: true
}
