import QtQuick
import Burrow.Components

Sheet {
    spacing: 4

    Strip {
        width: parent.width
        spacing: 12

        StepText {
            width: parent.width
            step: Tokens.reasonStrong
            text: "Temperature"
        }
        BandPlot {
            width: parent.width
            hasWanted: true
            wantedLow: 22
            wantedHigh: 26
            points: Array(56).fill(0).map((_, i) => ({
                        at: (i + 0.5) / 56,
                        low: 22 + Math.sin(i * 0.9) * 1.5,
                        middle: 23 + Math.sin(i * 0.9) * 1.6,
                        high: 24 + Math.sin(i * 0.9) * 1.7,
                        gap: i === 0 || i === 30
                    })).filter((_, i) => i < 24 || i > 29)
            labels: [[0, "2 May"], [0.143, "3 May"], [0.286, "4 May"], [0.429, "5 May"], [0.571, "6 May"], [0.714, "7 May"], [0.857, "8 May"]].map(([at, text]) => ({
                        at: at,
                        text: text
                    }))
        }
    }
    Strip {
        width: parent.width
        spacing: 12

        StepText {
            width: parent.width
            step: Tokens.reasonStrong
            text: "One reading"
        }
        BandPlot {
            width: parent.width
            points: [{
                    at: 0.8,
                    low: 24.5,
                    middle: 24.5,
                    high: 24.5,
                    gap: true
                }]
            labels: [{
                    at: 0,
                    text: "8 May"
                }]
        }
    }
}
