import QtQuick
import Burrow.Components
import Burrow.ViewModels

// A second phone for a room that has a book already: it starts from a file of the first.
BookPage {
    id: page

    readonly property JoinModel file: JoinModel {
        desk: page.kit.desk
        bookcase: page.kit.bookcase
        darkroom: page.kit.darkroom
        onJoined: page.kit.navigation.homed(0)
    }
    readonly property bool locked: page.file.step === JoinModel.Locked
    readonly property bool looked: page.file.step === JoinModel.Looked
    readonly property bool working: page.file.step === JoinModel.Looking
                                    || page.file.step === JoinModel.Joining

    title: qsTr("From my other phone")
    sub: qsTr("Both go on with the same room, each on its own.")
    mainText: page.looked ? qsTr("Start from it") : page.locked ? qsTr("Open it") : page.working
                                                                  ? qsTr("Stop") : qsTr("Choose a file")
    mainGlyph: page.looked ? "check" : page.locked ? "lock" : page.working ? "cross" : "folder"
    helperText: page.looked || page.locked ? qsTr("Another") : ""
    helperGlyph: "folder"
    onMain: {
        if (page.looked)
            page.file.join();
        else if (page.locked)
            page.file.unlock(passphrase.text);
        else if (page.working)
            page.file.work.stop();
        else
            chooser.open();
    }
    onHelper: chooser.open()

    MessageStrip {
        width: parent.width
        visible: page.file.trouble !== ""
        tone: "stop"
        happened: page.file.trouble
    }
    Strip {
        width: parent.width
        visible: page.file.step === JoinModel.Choosing
        spacing: Tokens.space8

        StepText {
            width: parent.width
            step: Tokens.bodyStrong
            text: qsTr("On the other phone: Shelves, the name of the room, Make a file.")
        }
        StepText {
            width: parent.width
            step: Tokens.reason
            color: Tokens.inkSoft
            text: qsTr("Bring the file here any way you like, and choose it. Later files of either phone keep both alike.")
        }
    }
    Strip {
        width: parent.width
        visible: page.working

        WorkLine {
            width: parent.width
            work: page.file.work
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
        visible: page.looked
        spacing: Tokens.space4

        StepText {
            width: parent.width
            step: Tokens.bodyStrong
            text: page.file.title
        }
        StepText {
            width: parent.width
            step: Tokens.reason
            color: Tokens.inkSoft
            text: page.file.text
        }
    }
    FileChooser {
        id: chooser
        title: qsTr("Burrowbook files")
        filters: [qsTr("Burrowbook files (*.burrow)"), qsTr("All files (*)")]
        onFilesChosen: files => page.file.look(files[0])
    }
}
