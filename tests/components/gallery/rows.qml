import QtQuick
import Burrow.Components

Sheet {
    spacing: 4

    Heading {
        width: parent.width
        text: "Due today"
    }
    StepText {
        width: parent.width
        step: Tokens.reason
        color: Tokens.inkSoft
        text: "Friday 8 May. 11 to feed, 1 to look at, 4 on hold"
    }
    SectionHead {
        width: parent.width
        name: "Shelf A"
        count: "2 to feed"
    }
    StripRow {
        width: parent.width
        tag: "214"
        binomial: "Brachypelma hamorii"
        verb: "Feed."
        reason: "Ate 9 days ago, usual gap is 8"
        line.marks: [
            {
                day: 100,
                height: 12
            },
            {
                day: 400,
                height: 16
            },
            {
                day: 720,
                height: 20
            }
        ]
        line.feedings: [
            {
                day: 1000,
                took: true
            },
            {
                day: 1008,
                took: true
            },
            {
                day: 1016,
                took: true
            }
        ]
        line.nowDay: 1024
    }
    StripRow {
        width: parent.width
        tag: "087"
        binomial: "Poecilotheria regalis"
        verb: "Feed."
        reason: "Refused twice, offer something smaller"
        line.marks: [
            {
                day: 100,
                height: 8
            },
            {
                day: 300,
                height: 11
            },
            {
                day: 500,
                height: 15.8
            }
        ]
        line.feedings: [
            {
                day: 600,
                took: true
            },
            {
                day: 608,
                took: false
            },
            {
                day: 616,
                took: false
            }
        ]
        line.nowDay: 700
        line.forecast: ({
                from: 720,
                median: 780,
                to: 860
            })
    }
    StripRow {
        width: parent.width
        tag: "118"
        punch: "hold"
        held: true
        binomial: "Grammostola pulchra"
        verb: "Hold."
        reason: "4 days since moult, still hardening. Opens 12 May"
        line.marks: [
            {
                day: 100,
                height: 12
            },
            {
                day: 400,
                height: 16
            },
            {
                day: 996,
                height: 22.6,
                hardening: 14
            }
        ]
        line.feedings: [
            {
                day: 960,
                took: true
            },
            {
                day: 970,
                took: false
            }
        ]
        line.nowDay: 1000
    }
    SectionHead {
        width: parent.width
        name: "Shelf C, warm"
        count: "6 to feed"
    }
    StripRow {
        width: parent.width
        tag: "009"
        punch: "look"
        look: true
        binomial: "Heterometrus silenus"
        verb: "Look."
        reason: "Nothing logged for 41 days"
        line.marks: [
            {
                day: 100,
                height: 22
            }
        ]
        line.nowDay: 400
    }
    StripRow {
        width: parent.width
        tag: "260"
        punch: "group"
        binomial: "Neoholothele incei"
        verb: "Feed the group."
        reason: "14 at last count, 26 days ago"
    }
    StripRow {
        width: parent.width
        tag: "KR-1045"
        punch: "premoult"
        held: true
        binomial: "Psalmopoeus irminia"
        verb: "Hold."
        reason: "Premoult since 2 May, water only"
        line.nowDay: 1000
    }
    WaitStrip {
        width: parent.width
        tag: "302"
        shown: true
        sentence: "302, being read"
    }
}
