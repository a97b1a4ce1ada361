import QtQuick
import Burrow.Components
import Burrow.ViewModels

// Another keeper's opinion on a moult: a question out as a file.
BookPage {
    id: page

    required property string moult
    required property string tag

    readonly property OpinionModel opinion: OpinionModel {
        desk: page.kit.desk
        sharer: page.kit.sharer
        moult: page.moult
        tag: page.tag
    }

    title: qsTr("Ask another keeper")
    sub: qsTr("About the moult of %1, by file").arg(page.tag)
    mainText: page.opinion.canShare ? qsTr("Hand over") : qsTr("Keep the file")
    mainGlyph: page.opinion.canShare ? "send" : "folder"
    busy: page.opinion.busy
    helperText: page.opinion.canShare ? qsTr("Keep") : ""
    helperGlyph: "folder"
    onMain: page.opinion.canShare ? page.opinion.share() : chooser.open()
    onHelper: chooser.open()

    OpinionDone {
        width: parent.width
        doneText: page.opinion.doneText
        trouble: page.opinion.trouble
    }
    Strip {
        width: parent.width
        spacing: Tokens.space8

        Heading {
            width: parent.width
            level: 2
            text: qsTr("What goes in")
        }
        StepText {
            width: parent.width
            step: Tokens.reason
            text: page.opinion.privacy
        }
        TextLine {
            width: parent.width
            label: qsTr("What you want to ask, if you like")
            clearText: qsTr("Empty the question")
            text: page.opinion.note
            field.maximumLength: 500
            onEdited: page.opinion.note = text
        }
    }
    WayRow {
        width: parent.width
        glyph: "bring-in"
        text: qsTr("Take an answer in")
        sub: qsTr("It becomes a look by whoever gave it")
        onActivated: answers.open()
    }
    FileChooser {
        id: chooser
        folders: true
        title: qsTr("Where to keep the question")
        onFolderChosen: folder => page.opinion.saveTo(folder)
    }
    FileChooser {
        id: answers
        title: qsTr("An answer")
        filters: [qsTr("Answers (*.burrowsaid)"), qsTr("All files (*)")]
        onFilesChosen: files => page.opinion.takeIn(files[0])
    }
}
