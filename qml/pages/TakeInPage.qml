pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// A file from another phone or another keeper: looked at, then taken in as a whole, and undone as a
// whole until the next one.
BookPage {
    id: page

    readonly property TakeInModel file: TakeInModel {
        desk: page.kit.desk
        darkroom: page.kit.darkroom
    }
    readonly property DifferencesModel differences: DifferencesModel {
        desk: page.kit.desk
    }
    readonly property bool choosing: page.file.step === TakeInModel.Choosing
    readonly property bool locked: page.file.step === TakeInModel.Locked
    readonly property bool looked: page.file.step === TakeInModel.Looked
    readonly property bool taken: page.file.step === TakeInModel.TakenIn
    readonly property bool working: page.file.step === TakeInModel.Looking
                                    || page.file.step === TakeInModel.TakingIn
    readonly property bool undoing: page.file.step === TakeInModel.TakingBack

    title: page.taken ? qsTr("File taken in") : qsTr("Take in a file")
    sub: page.file.title
    busy: page.undoing
    mainText: page.taken ? qsTr("Finish") : page.looked ? qsTr("Take it in") : page.locked
                                                          ? qsTr("Open it") : page.working
                                                            ? qsTr("Stop") : qsTr("Choose a file")
    mainGlyph: page.taken || page.looked ? "check" : page.locked ? "lock" : page.working ? "cross"
                                                                                        : "folder"
    helperText: page.taken ? qsTr("Undo all") : page.looked || page.locked ? qsTr("Another") : ""
    helperGlyph: page.taken ? "undo" : "folder"
    onMain: {
        if (page.taken)
            page.kit.navigation.backed();
        else if (page.looked)
            page.file.takeIn();
        else if (page.locked)
            page.file.unlock(passphrase.text);
        else if (page.working)
            page.file.work.stop();
        else
            chooser.open();
    }
    onHelper: {
        if (page.taken)
            page.file.undoAll();
        else
            chooser.open();
    }

    MessageStrip {
        width: parent.width
        visible: page.file.trouble !== ""
        tone: "stop"
        happened: page.file.trouble
    }
    Strip {
        width: parent.width
        visible: page.choosing && page.file.trouble === ""
        spacing: Tokens.space8

        StepText {
            width: parent.width
            step: Tokens.bodyStrong
            text: qsTr("A file that another Burrowbook made")
        }
        StepText {
            width: parent.width
            step: Tokens.reason
            color: Tokens.inkSoft
            text: qsTr("You see what is in it before anything is taken in. Nothing here is ever deleted by it.")
        }
    }
    Strip {
        width: parent.width
        visible: page.working || page.undoing

        WorkLine {
            width: parent.width
            work: page.file.work
        }
        StepText {
            width: parent.width
            visible: page.undoing
            step: Tokens.bodyStrong
            text: qsTr("Taking it back")
        }
    }
    TextLine {
        id: passphrase
        width: parent.width
        visible: page.locked
        label: qsTr("Passphrase of the file")
        hint: qsTr("Whoever made the file chose it.")
        clearText: qsTr("Empty the passphrase")
        field.maximumLength: 200
        onAccepted: page.file.unlock(text)
    }
    Strip {
        width: parent.width
        visible: page.taken
        spacing: Tokens.space16

        JoinedLines {
            width: parent.width
            before: page.file.before
            inFile: page.file.inFile
            now: page.file.now
        }
        CheckLine {
            width: parent.width
            text: qsTr("Nothing was deleted")
        }
    }
    FactStrip {
        width: parent.width
        facts: page.taken ? page.file.outcome : page.looked ? page.file.contents : []
    }
    Repeater {
        model: page.file.warnings

        MessageStrip {
            required property var modelData

            width: page.contentWidth
            happened: modelData.happened
            advice: modelData.advice
        }
    }
    DifferenceCard {
        width: parent.width
        visible: page.taken && page.differences.count > 0
        model: page.differences
    }
    Strip {
        width: parent.width
        visible: page.choosing && page.file.last !== ""
        spacing: Tokens.space8

        StripTitle {
            width: parent.width
            name: qsTr("The last file")
        }
        StepText {
            width: parent.width
            step: Tokens.reason
            color: Tokens.inkSoft
            text: page.file.last
        }
        ActionButton {
            width: parent.width
            kind: "secondary"
            glyph: "undo"
            text: qsTr("Take all of it back")
            onActivated: page.file.undoAll()
        }
    }
    FileChooser {
        id: chooser
        title: qsTr("Burrowbook files")
        filters: [qsTr("Burrowbook files (*.burrow)"), qsTr("All files (*)")]
        onFilesChosen: files => page.file.look(files[0])
    }
}
