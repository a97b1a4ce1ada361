import QtQuick
import Burrow.Components

Sheet {
    LabelHeader {
        width: parent.width
        huge: true
        punch: "feed"
        punchTone: Tokens.act
        tag: "087"
        cautions: ["Fast", "Strong venom"]
        binomial: "Poecilotheria regalis"
        about: "Juvenile female, carapace 15.8 mm"

        MoultLine {
            width: parent.width
            visible: !Tokens.roundCompact
            size: MoultLine.InHeader
            nowDay: 700
            marks: [[20, 4], [130, 6.5], [260, 9], [440, 15.8]].map(([day, height]) => ({
                        day: day,
                        height: height,
                        hardening: 8
                    }))
            feedings: [[55, 1], [70, 1], [90, 1], [160, 1], [180, 1], [200, 1], [300, 1], [320, 1], [340, 1], [360, 0], [500, 1], [530, 1], [560, 1], [600, 0], [650, 0]].map(([day, took]) => ({
                        day: day,
                        took: took === 1
                    }))
            forecast: ({
                    from: 720,
                    median: 790,
                    to: 920
                })
        }
    }
    ReasonText {
        width: parent.width
        verb: "Feed."
        reason: "Refused 14 mm twice, offer smaller"
        reasonColor: Tokens.ink
    }
    PreyGauge {
        width: parent.width
        amount: "1 cricket, 8 mm"
        carapace: 15.8
        prey: 8
        carapaceText: "carapace 15.8"
        preyText: "prey 8, half"
        lessText: "Smaller"
        moreText: "Larger"
    }
    PreyGauge {
        width: parent.width
        amount: "2 crickets, 5 mm"
        note: "Changed by hand"
        lessText: "Smaller"
        moreText: "Larger"
        canLess: false
    }
    UndoBar {
        width: parent.width
        tag: "260"
        message: "group fed, 6 crickets"
        undoText: "Undo"
        duration: 1000000000
    }
}
