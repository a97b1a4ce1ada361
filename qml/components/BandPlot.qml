import QtQuick
import Burrow.Components

// What swings over time. Data: `points` [{at, low, middle, high, gap}] with `at` from 0 to 1, `labels`
// [{at, text}], and with `hasWanted` the range from `wantedLow` to `wantedHigh` between dashed lines.
// The value axis is cut and finds its own round numbers. `description` says it in words for a screen
// reader.
BandPlotShape {
    id: plot

    property string description

    implicitWidth: 344
    implicitHeight: Math.round(160 * (0.5 + Tokens.factor / 2))
    tickFont: Tokens.tick.font
    tickLine: Tokens.tick.lineHeight
    ink: Tokens.ink
    soft: Tokens.inkSoft
    edge: Tokens.edge
    rule: Tokens.rule
    Accessible.role: Accessible.Chart
    Accessible.name: plot.description
}
