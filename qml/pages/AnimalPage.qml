pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// All that is known of one animal, group or lot.
BookPage {
    id: page

    required property string subject

    readonly property AnimalModel animal: AnimalModel {
        desk: page.kit.desk
        subject: page.subject
    }

    function open(name: string) {
        page.kit.navigation.pushed(name, {
            "subject": page.subject
        });
    }

    mainText: page.animal.missing ? "" : qsTr("Log for %1").arg(page.animal.tag)
    mainGlyph: "plus"
    helperText: qsTr("Scan")
    onMain: page.kit.navigation.log(page.subject)
    onHelper: page.kit.navigation.scan()

    GoneStrip {
        width: parent.width
        visible: page.animal.missing
    }
    LabelHeader {
        width: parent.width
        visible: !page.animal.missing
        punch: page.animal.punch
        tag: page.animal.tag
        side: page.animal.side
        place: page.animal.place
        binomial: page.animal.binomial
        about: page.animal.about
        size: page.animal.size
        nextPunch: page.animal.nextPunch
        verb: page.animal.verb
        reason: page.animal.reason
    }
    AnimalCautions {
        width: parent.width
        cautions: page.animal.cautions
    }
    AnimalLife {
        width: parent.width
        visible: page.animal.ready
        animal: page.animal
        onEntryWanted: entry => page.kit.navigation.pushed("EntryPage", {
            "entry": entry
        })
    }
    LineList {
        width: parent.width
        visible: page.animal.facts.length > 0
        rows: page.animal.facts
        onOpened: (name, properties) => page.kit.navigation.pushed(name, properties)
    }
    LineList {
        width: parent.width
        visible: page.animal.why.length > 0
        title: qsTr("Why today")
        rows: page.animal.why
        onOpened: (name, properties) => page.kit.navigation.pushed(name, properties)
    }
    LineList {
        width: parent.width
        visible: page.animal.sexLines.length > 0
        title: qsTr("Evidence for sex")
        headline: page.animal.sex
        rows: page.animal.sexLines
        onOpened: (name, properties) => page.kit.navigation.pushed(name, properties)
    }
    WayRow {
        width: parent.width
        visible: page.animal.sexLines.length > 0 || page.animal.sexConflict !== ""
        glyph: "sheet"
        text: qsTr("How sure that is")
        sub: page.animal.sexConflict
        onActivated: page.kit.navigation.pushed("SexEvidencePage", {
            "subject": page.subject
        })
    }
    PhotoStrip {
        width: parent.width
        visible: page.animal.photos.length > 0
        photos: page.animal.photos
        onOpened: entry => page.kit.navigation.pushed("EntryPage", {
            "entry": entry
        })
    }
    SectionHead {
        width: parent.width
        visible: page.animal.entries.length > 0
        name: qsTr("Last entries")
    }
    Repeater {
        model: page.animal.entries

        EntryRow {
            required property var modelData

            width: parent.width
            day: modelData.day
            title: modelData.title
            detail: modelData.detail
            note: modelData.note
            glyph: modelData.glyph
            onActivated: page.kit.navigation.pushed("EntryPage", {
                "entry": modelData.entry
            })
        }
    }
    WayRow {
        width: parent.width
        visible: page.animal.entryCount > page.animal.entries.length
        glyph: "clock"
        text: qsTr("All %1 entries").arg(page.animal.entryCount)
        onActivated: page.open("HistoryPage")
    }
    SectionHead {
        width: parent.width
        visible: !page.animal.missing
        name: qsTr("More")
    }
    Column {
        width: parent.width
        visible: !page.animal.missing
        spacing: Tokens.betweenStrips

        WayRow {
            width: parent.width
            glyph: "sheet"
            text: qsTr("Care sheet")
            sub: qsTr("Its care and its history, to hand over")
            onActivated: page.open("CareSheetPage")
        }
        WayRow {
            width: parent.width
            visible: page.animal.kept
            glyph: "tag"
            text: qsTr("Print its tag")
            onActivated: page.kit.navigation.pushed("TagSheetPage", {
                "subjects": [page.subject]
            })
        }
        WayRow {
            width: parent.width
            visible: page.animal.kept
            glyph: "moult"
            text: qsTr("Moult found")
            sub: qsTr("Photograph it, measure it")
            onActivated: page.kit.navigation.moult(page.subject)
        }
        WayRow {
            width: parent.width
            glyph: "ruler"
            text: qsTr("Its sizes")
            sub: qsTr("Each length over its moults")
            onActivated: page.open("SizesPage")
        }
        WayRow {
            width: parent.width
            glyph: "edit"
            text: qsTr("Change what is known of it")
            onActivated: page.open("AnimalFormPage")
        }
    }
}
