import QtQuick
import Burrow.Components

// Growth in steps. Data: `points` [{day, value}], `nowDay`, optional `band`
// [{day, low, median, high}] from now on, `labels` [{day, text}]. The value axis starts at zero and
// finds its own round numbers. `description` says it in words for a screen reader.
StepPlotShape {
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
    est: Tokens.est
    hole: Tokens.ground
    bandPeak: Tokens.plotBandPeak
    Accessible.role: Accessible.Chart
    Accessible.name: plot.description
}
