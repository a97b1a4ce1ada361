import QtQuick
import Burrow.Components

// An animal's life as a line, in three sizes: `size: MoultLine.InRow | InHeader | OnPage`.
// Data: `marks` [{day, height, hardening, photo}], `feedings` [{day, took}], `nowDay`, optional
// `startDay`, `forecast` {from, median, to}, `labels` [{day, text}], `nowLabel`, `forecastLabel`.
// With `tappable` it emits markTapped(index) for taps and for arrow keys with Enter.
// `description` says it all in words for a screen reader.
MoultLineShape {
    id: line

    property string description

    // Text stands above and below the drawing, which grows with it rather than getting denser.
    readonly property real extra: 4 * (Tokens.tick.lineHeight - Tokens.tick.line)

    implicitWidth: [Tokens.rowsStack ? 118 : 62, 344, 352][line.size]
    implicitHeight: [27, 54, 168 + line.extra][line.size]
    tickFont: Tokens.tick.font
    tickLine: Tokens.tick.lineHeight
    ink: Tokens.ink
    soft: Tokens.inkSoft
    edge: Tokens.edge
    est: Tokens.est
    hatch: Tokens.hatch
    hole: Tokens.ground
    bandPeak: Tokens.moultBandPeak
    Accessible.role: Accessible.Graphic
    Accessible.name: line.description
}
