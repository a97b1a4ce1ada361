import QtQuick
import Burrow.Components
import Burrow.ViewModels

// The whole book as files that other programs read, in a folder of the keeper's choice.
BookPage {
    id: page

    readonly property LeaveModel leave: LeaveModel {
        desk: page.kit.desk
    }

    title: qsTr("Take everything along")
    sub: page.leave.contents
    mainText: page.leave.working ? qsTr("Stop") : qsTr("Choose a folder")
    mainGlyph: page.leave.working ? "cross" : "folder"
    onMain: {
        if (page.leave.working)
            page.leave.stop();
        else
            chooser.open();
    }
    lower: Column {
        width: parent.width
        spacing: Tokens.betweenStrips

        MessageStrip {
            width: parent.width
            visible: page.leave.savedText !== ""
            tone: "ok"
            happened: page.leave.savedText
            safe: page.leave.missing
        }
        MessageStrip {
            width: parent.width
            visible: page.leave.trouble !== ""
            tone: "stop"
            happened: page.leave.trouble
        }
    }

    Strip {
        width: parent.width
        visible: page.leave.working
        spacing: Tokens.space4

        StepText {
            width: parent.width
            step: Tokens.bodyStrong
            text: qsTr("Writing it down")
        }
        StepText {
            width: parent.width
            step: Tokens.reason
            color: Tokens.inkSoft
            text: page.leave.progress
        }
    }
    SwitchRow {
        width: parent.width
        text: qsTr("Tables")
        sub: qsTr("CSV for any spreadsheet. A new book can be made from them.")
        on: page.leave.tables
        wordOn: qsTr("In")
        wordOff: qsTr("Out")
        onToggled: wish => page.leave.tables = wish
    }
    SwitchRow {
        width: parent.width
        text: qsTr("One document")
        sub: qsTr("JSON with everything, also what was corrected and taken back.")
        on: page.leave.document
        wordOn: qsTr("In")
        wordOff: qsTr("Out")
        onToggled: wish => page.leave.document = wish
    }
    SwitchRow {
        width: parent.width
        text: qsTr("Photos")
        sub: qsTr("Upright, without the place they were taken at.")
        on: page.leave.photos
        wordOn: qsTr("In")
        wordOff: qsTr("Out")
        onToggled: wish => page.leave.photos = wish
    }
    StepText {
        width: parent.width
        topPadding: step.above + Tokens.space4
        step: Tokens.reason
        color: Tokens.inkSoft
        text: qsTr("The files stand in a new folder with the room's name and today's day, and read-me.md there says what each of them holds. The book itself stays as it is.")
    }
    FileChooser {
        id: chooser
        folders: true
        title: qsTr("Where the folder goes")
        onFolderChosen: folder => page.leave.saveTo(folder)
    }
}
