import QtQuick
import Burrow.Components
import Burrow.ViewModels

// A file of the book, or of some of its animals: made, read back, and only then handed over or kept.
BookPage {
    id: page

    property list<string> subjects

    readonly property MakeFileModel file: MakeFileModel {
        desk: page.kit.desk
        darkroom: page.kit.darkroom
        sharer: page.kit.sharer
        subjects: page.subjects
    }
    readonly property bool making: page.file.step === MakeFileModel.Making
    readonly property bool made: page.file.step === MakeFileModel.Made

    title: qsTr("Make a file")
    sub: page.subjects.length > 0 ? qsTr("Of some animals, for another Burrowbook")
                                  : qsTr("For another Burrowbook phone, or to keep")
    mainText: page.making ? qsTr("Stop") : !page.made ? qsTr("Make it") : page.file.canShare
                                                        ? qsTr("Hand over") : qsTr("Keep")
    mainGlyph: page.making ? "cross" : !page.made ? "check" : page.file.canShare ? "send" : "folder"
    helperText: page.made && page.file.canShare ? qsTr("Keep") : ""
    helperGlyph: "folder"
    onMain: {
        if (page.making)
            page.file.work.stop();
        else if (!page.made)
            page.file.make();
        else if (page.file.canShare)
            page.file.handOver();
        else
            chooser.open();
    }
    onHelper: chooser.open()
    lower: Column {
        width: parent.width
        spacing: Tokens.betweenStrips

        MessageStrip {
            width: parent.width
            visible: page.file.savedText !== ""
            tone: "ok"
            happened: page.file.savedText
        }
        MessageStrip {
            width: parent.width
            visible: page.file.trouble !== ""
            tone: "stop"
            happened: page.file.trouble
        }
    }

    FileLabel {
        width: parent.width
        file: page.file
    }
    MessageStrip {
        width: parent.width
        visible: page.file.missingText !== ""
        happened: page.file.missingText
    }
    Strip {
        width: parent.width
        visible: page.subjects.length === 0 && page.file.extents.length > 1
        spacing: Tokens.space8

        StripTitle {
            width: parent.width
            name: qsTr("How much")
        }
        ChoiceTiles {
            width: parent.width
            enabled: !page.making
            name: qsTr("How much")
            options: page.file.extents
            current: page.file.extent
            onChosen: index => page.file.extent = index
        }
    }
    SectionHead {
        width: parent.width
        name: qsTr("What goes in")
    }
    Strip {
        width: parent.width

        StepText {
            width: parent.width
            step: Tokens.bodyStrong
            text: qsTr("Animals, groups, enclosures, tags")
        }
        StepText {
            width: parent.width
            step: Tokens.reason
            color: Tokens.inkSoft
            text: qsTr("Always in, with all that happened to them")
        }
    }
    Strip {
        width: parent.width
        spacing: Tokens.space8

        StripTitle {
            width: parent.width
            name: qsTr("Photos")
        }
        ChoiceTiles {
            width: parent.width
            enabled: !page.making
            name: qsTr("Photos")
            options: [
                {
                    "word": qsTr("Out"),
                    "sub": ""
                },
                {
                    "word": qsTr("Small"),
                    "sub": qsTr("to look at")
                },
                {
                    "word": qsTr("Full"),
                    "sub": qsTr("to measure")
                }
            ]
            current: page.file.photos
            onChosen: index => page.file.photos = index
        }
    }
    SwitchRow {
        width: parent.width
        enabled: !page.making
        text: qsTr("Prices, buyers, private notes")
        sub: page.file.confidential ? qsTr("Anyone who has the file can read them") : qsTr("Left out")
        wordOn: qsTr("in")
        wordOff: qsTr("out")
        on: page.file.confidential
        onToggled: on => page.file.confidential = on
    }
    TextLine {
        width: parent.width
        enabled: !page.making
        label: qsTr("Passphrase, if you want one")
        hint: qsTr("Whoever takes the file in has to type it. Nobody can open the file without it.")
        clearText: qsTr("Empty the passphrase")
        text: page.file.passphrase
        field.maximumLength: 200
        onEdited: page.file.passphrase = text
    }
    StepText {
        width: parent.width
        topPadding: step.above + Tokens.space8
        step: Tokens.reason
        color: Tokens.inkSoft
        text: qsTr("The file is checked by reading it back before you hand it over.")
    }
    FileChooser {
        id: chooser
        folders: true
        title: qsTr("Where to keep the file")
        onFolderChosen: folder => page.file.keepIn(folder)
    }
}
