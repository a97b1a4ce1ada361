import QtQuick
import Burrow.Components

// How far along a round is: `holes` is a list of "done", "slash", "open" and "current", one per tub
// in shelf order; above 60 it becomes a plain bar. `largest` and `widest` bound the radius of a hole and
// the way to the next. `description` says it in words ("17 of 30").
RoundHolesShape {
    id: row

    property string description

    implicitWidth: 380
    implicitHeight: 12
    ink: Tokens.ink
    edge: Tokens.edge
    act: Tokens.act
    Accessible.role: Accessible.ProgressBar
    Accessible.name: row.description
}
