pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// A moult's photo, where to look, and what the keeper sees.
ScrollPage {
    id: page

    required property Kit kit
    required property string moult

    readonly property SexModel model: SexModel {
        desk: page.kit.desk
        moult: page.moult
        onSaved: page.kit.navigation.backed()
    }

    // An earlier moult stands beside this one then; -1 for a drawing.
    function look(at: int, earlierAt: int) {
        page.kit.navigation.pushed("SexLookPage", {
            "photos": page.model.photos,
            "earlier": page.model.earlier,
            "drawings": page.model.drawings,
            "at": at,
            "earlierAt": earlierAt,
            "closeMm": page.model.closeMm
        });
    }

    spacing: Tokens.betweenStrips

    Heading {
        width: parent.width
        bottomPadding: Tokens.space8
        text: page.model.missing ? qsTr("There is no photo of this moult") : page.model.title
    }
    TroubleSlot {
        width: parent.width
        trouble: page.kit.desk.trouble
        onDismissed: page.kit.desk.dismissTrouble()
    }
    SexPhotos {
        width: parent.width
        visible: page.model.ready
        model: page.model
        wide: page.wide
        onLooked: at => page.look(at, -1)
        onEarlierLooked: at => page.look(0, at)
    }
    LabelHeader {
        width: parent.width
        visible: page.model.ready
        tag: page.model.tag
        binomial: page.model.binomial
        about: page.model.about
    }
    Strip {
        width: parent.width
        visible: page.model.ready
        spacing: Tokens.space8

        Heading {
            width: parent.width
            level: 2
            text: qsTr("Where to look")
        }
        Repeater {
            model: page.model.guidance

            StepText {
                required property string modelData

                width: parent.width
                step: Tokens.reason
                text: modelData
            }
        }
    }
    SexChoice {
        width: parent.width
        visible: page.model.ready
        model: page.model
    }
    Repeater {
        model: page.model.opinions

        MessageStrip {
            required property string modelData

            width: page.contentWidth
            tone: "ok"
            happened: modelData
        }
    }
    WayRow {
        width: parent.width
        visible: page.model.ready
        glyph: "sheet"
        text: qsTr("All evidence for its sex")
        sub: page.model.preview
        onActivated: page.kit.navigation.pushed("SexEvidencePage", {
            "subject": page.model.subject
        })
    }
    WayRow {
        width: parent.width
        visible: page.model.ready
        glyph: "send"
        text: qsTr("Ask another keeper")
        sub: qsTr("By a file with the photos of this moult")
        onActivated: page.kit.navigation.pushed("OpinionPage", {
            "moult": page.moult,
            "tag": page.model.tag
        })
    }
    bar: ContextBar {
        width: parent.width
        backText: qsTr("Back")
        mainText: page.model.ready ? qsTr("Write it down") : ""
        mainGlyph: "check"
        mainEnabled: page.model.choice >= 0
        busy: page.model.busy
        busyText: qsTr("Saving")
        helperText: page.model.ready ? qsTr("Closer") : ""
        helperGlyph: "search"
        onBack: page.kit.navigation.backed()
        onMain: page.model.save()
        onHelper: page.look(0, -1)
    }
}
