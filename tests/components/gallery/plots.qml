import QtQuick
import Burrow.Components

Sheet {
    spacing: 4

    Strip {
        width: parent.width

        StepText {
            width: parent.width
            step: Tokens.reasonStrong
            text: "Moult line"
        }
        MoultLine {
            x: -4
            width: parent.width + 8
            tappable: true
            nowDay: 20581
            marks: [[18720, 3.1, 4, 0], [18830, 4.2, 4, 0], [18960, 6, 5, 0], [19110, 8.2, 6, 1], [19300, 11.5, 7, 0], [19570, 15.2, 8, 0], [19850, 19.6, 10, 1], [20230, 24.1, 12, 1]].map(([day, height, hardening, photo]) => ({
                        day: day,
                        height: height,
                        hardening: hardening,
                        photo: photo === 1
                    }))
            feedings: Array(200).fill(0).map((_, i) => ({
                        day: 18740 + i * 9,
                        took: i % 11 !== 10 && i % 40 < 34
                    }))
            forecast: ({
                    from: 20635,
                    median: 20790,
                    to: 20939
                })
            labels: [[18993, "2022"], [19358, "2023"], [19723, "2024"], [20089, "2025"], [20454, "2026"]].map(([day, text]) => ({
                        day: day,
                        text: text
                    }))
            nowLabel: "now"
            forecastLabel: "Jul to May"
        }
    }
    Strip {
        width: parent.width
        spacing: 12

        StepText {
            width: parent.width
            step: Tokens.reasonStrong
            text: "Growth"
        }
        StepPlot {
            width: parent.width
            nowDay: 20581
            points: [[18720, 3.1], [18830, 4.2], [18960, 6], [19110, 8.2], [19300, 11.5], [19570, 15.2], [19850, 19.6], [20230, 24.1]].map(([day, value]) => ({
                        day: day,
                        value: value
                    }))
            band: [[20630, 24.1, 25, 25.8], [20760, 25, 26.8, 28], [20939, 26, 28, 30.5]].map(([day, low, median, high]) => ({
                        day: day,
                        low: low,
                        median: median,
                        high: high
                    }))
            labels: [[18993, "2022"], [19358, "2023"], [19723, "2024"], [20089, "2025"], [20454, "2026"]].map(([day, text]) => ({
                        day: day,
                        text: text
                    }))
        }
        StepText {
            width: parent.width
            step: Tokens.reason
            color: Tokens.est
            text: "Next moult: 25 to 29 mm, eight times in ten"
        }
    }
    Strip {
        width: parent.width

        MoultLine {
            width: parent.width
            size: MoultLine.InHeader
            nowDay: 1004
            marks: [[20, 10], [330, 14], [690, 18], [1000, 22.6]].map(([day, height]) => ({
                        day: day,
                        height: height,
                        hardening: 14
                    }))
            feedings: [[100, 1], [140, 1], [180, 1], [220, 0], [430, 1], [480, 1], [520, 1], [560, 1], [790, 1], [840, 1], [880, 1], [920, 0], [960, 0]].map(([day, took]) => ({
                        day: day,
                        took: took === 1
                    }))
        }
        MoultLine {
            width: parent.width
            nowDay: 300
            startDay: 240
            nowLabel: "now"
        }
        StepPlot {
            width: parent.width
            nowDay: 90
            points: [
                {
                    day: 0,
                    value: 0.9
                },
                {
                    day: 60,
                    value: 1.4
                }
            ]
        }
    }
}
