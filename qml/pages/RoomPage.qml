import QtQuick
import Burrow.Components
import Burrow.ViewModels

// The room as a whole, and what is rarely needed: sheets, files, rules, settings.
BookPage {
    id: page

    readonly property RoomModel room: RoomModel {
        desk: page.kit.desk
        onFound: subject => page.open("CareSheetPage", {
            "subject": subject
        })
    }

    function open(name: string, properties: var) {
        page.kit.navigation.pushed(name, properties ?? {});
    }

    title: page.room.name
    sub: page.room.summary

    MessageStrip {
        width: parent.width
        visible: page.kit.desk.demo
        happened: qsTr("This is the invented room.")
        safe: qsTr("Nothing in it is real, and nothing you do here touches a book of your own.")
        actionText: page.kit.bookcase.hasOwnBook ? qsTr("Back to my own room") : qsTr("Leave the demo")
        onActed: {
            page.kit.navigation.homed(0);
            page.kit.bookcase.leaveDemo();
        }
    }
    SectionHead {
        width: parent.width
        name: qsTr("Ahead and on paper")
    }
    RoomSheets {
        width: parent.width
        kit: page.kit
        room: page.room
    }
    SectionHead {
        width: parent.width
        name: qsTr("Records")
    }
    WayRow {
        width: parent.width
        glyph: "moult"
        text: qsTr("Moults to be sexed")
        sub: page.room.toSex
        onActivated: page.open("SexQueuePage")
    }
    BookCheck {
        width: parent.width
        room: page.room
    }
    WayRow {
        width: parent.width
        glyph: "book"
        text: qsTr("Copies of the book")
        sub: qsTr("Made by themselves, and the way back to one")
        onActivated: page.open("BackupsPage")
    }
    RoomCare {
        width: parent.width
        kit: page.kit
    }
    SectionHead {
        width: parent.width
        name: qsTr("Files")
    }
    WayRow {
        width: parent.width
        glyph: "send"
        text: qsTr("Make a file")
        sub: qsTr("For another phone, or to keep")
        onActivated: page.open("MakeFilePage")
    }
    WayRow {
        width: parent.width
        glyph: "swap"
        text: qsTr("Take in a file")
        sub: qsTr("From another phone or another keeper")
        onActivated: page.open("TakeInPage")
    }
    WayRow {
        width: parent.width
        glyph: "folder"
        text: qsTr("Shared folder")
        sub: page.kit.share.folder === "" ? qsTr("For a room that is kept on several phones") : page.kit.share.state
        onActivated: page.open("SharedFolderPage")
    }
    WayRow {
        width: parent.width
        visible: page.room.differences !== ""
        glyph: "caution"
        text: qsTr("Differences")
        sub: page.room.differences
        onActivated: page.open("DifferencesPage")
    }
    WayRow {
        width: parent.width
        glyph: "bring-in"
        text: qsTr("Bring in a table")
        sub: qsTr("From CSV, or a spreadsheet of your own")
        onActivated: page.open("BringPage")
    }
    WayRow {
        width: parent.width
        glyph: "ended"
        text: qsTr("Take everything along")
        sub: qsTr("The whole book as tables and a document for other programs")
        onActivated: page.open("LeavePage")
    }
    WayRow {
        width: parent.width
        glyph: "calendar"
        text: qsTr("Due dates for a calendar")
        sub: qsTr("So that any calendar shows what is due")
        onActivated: page.open("CalendarPage")
    }
    SectionHead {
        width: parent.width
        name: qsTr("What it goes by")
    }
    WayRow {
        width: parent.width
        glyph: "ruler"
        text: qsTr("Rules of thumb")
        sub: qsTr("When to feed, to water, to leave alone")
        onActivated: page.open("RulesPage")
    }
    WayRow {
        width: parent.width
        glyph: "book"
        text: qsTr("Species")
        sub: qsTr("What is known of each, and from where")
        onActivated: page.open("SpeciesPage")
    }
    SectionHead {
        width: parent.width
        name: qsTr("Settings")
    }
    WayRow {
        width: parent.width
        glyph: "sun"
        text: qsTr("Look and handling")
        sub: qsTr("Light, text size, the hand that holds it")
        onActivated: page.open("LookPage")
    }
    WayRow {
        width: parent.width
        glyph: "due"
        text: qsTr("Reminders")
        sub: page.kit.reminders.state
        onActivated: page.open("RemindersPage")
    }
    WayRow {
        width: parent.width
        glyph: "room"
        text: qsTr("Name, code and contact")
        sub: page.room.contact === "" ? qsTr("Care sheets do not say how to reach you yet") : page.room.contact
        onActivated: edit.begin()
    }
    WayRow {
        width: parent.width
        glyph: "info"
        text: qsTr("About")
        sub: qsTr("Version and licences")
        onActivated: page.open("AboutPage")
    }
    RoomEditSheet {
        id: edit
        model: page.room
    }
}
