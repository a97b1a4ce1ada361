pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// How likely an animal is a female, why, what disagrees, and what would settle it.
BookPage {
    id: page

    required property string subject

    readonly property SexEvidenceModel evidence: SexEvidenceModel {
        desk: page.kit.desk
        subject: page.subject
    }

    title: qsTr("Evidence for sex")
    mainText: page.evidence.writeText
    mainGlyph: "check"
    busy: page.evidence.busy
    helperText: page.evidence.askable !== "" ? qsTr("Ask") : ""
    helperGlyph: "send"
    onMain: page.evidence.write()
    onHelper: page.kit.navigation.pushed("OpinionPage", {
        "moult": page.evidence.askable,
        "tag": page.evidence.tag
    })

    LabelHeader {
        width: parent.width
        visible: page.evidence.ready
        tag: page.evidence.tag
        binomial: page.evidence.binomial
        about: page.evidence.about
    }
    SexVerdict {
        width: parent.width
        visible: page.evidence.ready
        verdict: page.evidence.verdict
        chance: page.evidence.chance
        before: page.evidence.before
        after: page.evidence.female
        stops: page.evidence.stops
        stop: page.evidence.stop
    }
    Repeater {
        model: page.evidence.conflicts

        MessageStrip {
            required property string modelData

            width: page.contentWidth
            happened: modelData
        }
    }
    SectionHead {
        width: parent.width
        visible: page.evidence.ledger.length > 0
        name: qsTr("What was seen")
        count: page.evidence.ledger.length.toString()
    }
    Strip {
        width: parent.width
        visible: page.evidence.ready

        Repeater {
            id: lines
            model: page.evidence.ledger

            EvidenceRow {
                required property int index
                required property var modelData

                width: parent?.width ?? 0
                line: modelData
                last: index === lines.count - 1
            }
        }
        StepText {
            width: parent.width
            topPadding: step.above + Tokens.space8
            step: Tokens.reason
            color: Tokens.inkSoft
            text: page.evidence.note
        }
    }
    SectionHead {
        width: parent.width
        visible: page.evidence.wouldSettle.length > 0
        name: qsTr("What would settle it")
    }
    Repeater {
        model: page.evidence.wouldSettle

        SettlesStrip {
            required property var modelData

            width: page.contentWidth
            what: modelData.text
            range: modelData.range
            moult: modelData.moult
            onMoultWanted: moult => page.kit.navigation.pushed("SexPage", {
                "moult": moult
            })
        }
    }
}
