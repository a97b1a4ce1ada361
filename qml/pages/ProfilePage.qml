pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// All that is known here of a species, line by line with its source; what to be careful of comes first.
BookPage {
    id: page

    required property string species

    readonly property ProfileModel profile: ProfileModel {
        desk: page.kit.desk
        species: page.species
    }
    readonly property ProfileFiles files: ProfileFiles {
        desk: page.kit.desk
        sharer: page.kit.sharer
        species: page.species
    }

    title: page.profile.missing ? qsTr("Species") : ""
    mainText: page.profile.missing ? "" : qsTr("Change")
    mainGlyph: "edit"
    helperText: page.profile.missing || !page.files.canShare ? "" : qsTr("Share")
    helperGlyph: "send"
    onMain: page.kit.navigation.pushed("ProfileFormPage", {
        "species": page.profile.name
    })
    onHelper: page.files.share()
    lower: ProfileFilesDone {
        width: parent.width
        files: page.files
    }

    GoneStrip {
        width: parent.width
        visible: page.profile.missing
    }
    Latin {
        width: parent.width
        visible: !page.profile.missing
        large: true
        text: page.profile.name
    }
    StepText {
        width: parent.width
        bottomPadding: Tokens.space8
        step: Tokens.reason
        color: Tokens.inkSoft
        text: page.profile.missing ? "" : page.profile.kind + ". " + page.profile.origin
    }
    Repeater {
        model: page.profile.cautions

        MessageStrip {
            required property var modelData

            width: parent.width
            tone: "stop"
            happened: modelData.word
            advice: modelData.advice
        }
    }
    LineList {
        width: parent.width
        visible: page.profile.lines.length > 0
        rows: page.profile.lines
    }
    Column {
        width: parent.width
        visible: !page.profile.missing
        topPadding: Tokens.space8
        spacing: Tokens.betweenStrips

        WayRow {
            width: parent.width
            glyph: "send"
            text: qsTr("Give it away as a file")
            sub: qsTr("Another keeper can take it in")
            onActivated: chooser.open()
        }
        WayRow {
            width: parent.width
            visible: page.profile.own
            glyph: "undo"
            endGlyph: ""
            text: page.profile.overShipped ? qsTr("As shipped again") : qsTr("Take it out")
            sub: page.profile.overShipped ? qsTr("Your own profile is taken out, the shipped one counts")
                                          : qsTr("Animals keep its name, and nothing more is known of it")
            onActivated: page.profile.drop()
        }
    }
    FileChooser {
        id: chooser
        folders: true
        title: qsTr("Where to save the species")
        onFolderChosen: folder => page.files.saveTo(folder)
    }
}
