import QtQuick
import Burrow.Components
import Burrow.ViewModels

// Records from CSV files: chosen, looked at, and only then written, all or nothing.
BookPage {
    id: page

    readonly property BringModel bring: BringModel {
        desk: page.kit.desk
        darkroom: page.kit.darkroom
    }
    readonly property bool working: page.bring.step === BringModel.Reading
                                    || page.bring.step === BringModel.Writing
    readonly property bool finished: page.bring.step === BringModel.Finished
    readonly property bool looked: page.bring.step === BringModel.Ready

    title: page.finished ? qsTr("Brought in") : qsTr("Bring in a table")
    mainText: page.finished ? qsTr("Done") : page.looked && page.bring.hasGood ? page.verb()
                                           : page.working ? qsTr("Stop") : qsTr("Choose files")
    mainGlyph: page.finished || page.looked ? "check" : page.working ? "cross" : "folder"
    helperText: page.finished ? qsTr("Undo all") : page.looked && page.bring.hasGood ? qsTr("Files") : ""
    helperGlyph: page.finished ? "undo" : "folder"
    onMain: page.go()
    onHelper: {
        if (page.finished)
            page.bring.undoAll();
        else
            chooser.open();
    }

    function verb(): string {
        return page.bring.badText === "" ? qsTr("Bring in") : qsTr("Leave those out");
    }
    function go() {
        if (page.finished)
            page.kit.navigation.backed();
        else if (page.working)
            page.bring.stop();
        else if (!page.looked || !page.bring.hasGood)
            chooser.open();
        else if (page.bring.badText === "")
            page.bring.bringAll();
        else
            page.bring.bringGood();
    }

    MessageStrip {
        width: parent.width
        visible: page.bring.trouble !== ""
        tone: "stop"
        happened: page.bring.trouble
    }
    BringHelp {
        width: parent.width
        visible: page.bring.step === BringModel.Choosing && page.bring.files.length === 0
    }
    BringFiles {
        width: parent.width
        visible: page.bring.files.length > 0 && !page.finished
        bring: page.bring
        removable: !page.working
        onMappingAsked: file => page.kit.navigation.pushed("MappingPage", {
            "bring": page.bring,
            "file": file
        })
    }
    Strip {
        width: parent.width
        visible: page.working || page.bring.contents !== ""
        spacing: Tokens.space4

        StepText {
            width: parent.width
            visible: page.working
            step: Tokens.bodyStrong
            text: page.bring.step === BringModel.Writing ? qsTr("Writing it down") : qsTr("Reading")
        }
        StepText {
            width: parent.width
            visible: page.working
            step: Tokens.reason
            color: Tokens.inkSoft
            text: page.bring.progress
        }
        StepText {
            width: parent.width
            visible: !page.working
            step: Tokens.bodyStrong
            text: page.bring.contents
        }
        StepText {
            width: parent.width
            visible: page.looked
            step: Tokens.reason
            color: Tokens.inkSoft
            text: qsTr("Nothing is written yet.")
        }
    }
    BadRows {
        width: parent.width
        visible: page.looked && page.bring.badText !== ""
        bring: page.bring
    }
    MessageStrip {
        width: parent.width
        visible: page.finished && page.bring.leftOut !== ""
        happened: page.bring.leftOut
        actionText: page.bring.needsFolder ? qsTr("Choose a folder") : ""
        onActed: folder.open()
    }
    FileChooser {
        id: chooser
        title: qsTr("CSV files")
        filters: [qsTr("CSV files (*.csv *.tsv *.txt *.json)"), qsTr("All files (*)")]
        onFilesChosen: files => page.bring.addFiles(files)
    }
    FileChooser {
        id: folder
        folders: true
        title: qsTr("Where to keep the rows that were left out")
        onFolderChosen: chosen => page.bring.keepLeftOutIn(chosen)
    }
}
