import QtQuick
import Burrow.Components
import Burrow.ViewModels

// Due dates as a file for the calendar of any phone or computer.
BookPage {
    id: page

    readonly property CalendarModel dates: CalendarModel {
        desk: page.kit.desk
        sharer: page.kit.sharer
    }

    title: qsTr("Due dates for a calendar")
    sub: page.dates.contents
    mainText: qsTr("Save the file")
    mainGlyph: "calendar"
    mainEnabled: page.dates.any
    helperText: page.dates.canShare && page.dates.any ? qsTr("Share") : ""
    helperGlyph: "send"
    onMain: chooser.open()
    onHelper: page.dates.share()
    lower: Column {
        width: parent.width
        spacing: Tokens.betweenStrips

        MessageStrip {
            width: parent.width
            visible: page.dates.savedText !== ""
            tone: "ok"
            happened: page.dates.savedText
        }
        MessageStrip {
            width: parent.width
            visible: page.dates.trouble !== ""
            tone: "stop"
            happened: page.dates.trouble
        }
    }

    Strip {
        width: parent.width
        spacing: Tokens.space8

        StripTitle {
            width: parent.width
            name: qsTr("How far ahead")
        }
        ChoiceTiles {
            width: parent.width
            name: qsTr("How far ahead")
            options: page.dates.spans
            current: page.dates.span
            onChosen: index => page.dates.span = index
        }
    }
    LineList {
        width: parent.width
        visible: page.dates.any
        title: qsTr("Next, as a calendar will show it")
        rows: page.dates.first
        note: qsTr("Each lasts all day, from the day it opens to the last before it is late; the best day stands in it.")
    }
    StepText {
        width: parent.width
        topPadding: step.above + Tokens.space4
        step: Tokens.reason
        color: Tokens.inkSoft
        text: qsTr("Give it a calendar of its own. What is logged later changes the dates: a new file, taken into the same calendar, replaces them.")
    }
    FileChooser {
        id: chooser
        folders: true
        title: qsTr("Where to save the calendar file")
        onFolderChosen: folder => page.dates.saveTo(folder)
    }
}
