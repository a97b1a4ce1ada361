import QtQuick
import Burrow.Components
import Burrow.ViewModels

// The care sheet of one animal, to be saved or handed over.
BookPage {
    id: page

    required property string subject

    readonly property CareSheetModel care: CareSheetModel {
        desk: page.kit.desk
        printer: page.kit.printer
        sharer: page.kit.sharer
        subject: page.subject
    }

    title: qsTr("Care sheet")
    sub: page.care.missing ? "" : page.care.tag + ", " + page.care.binomial
    mainText: page.care.missing ? "" : qsTr("Save PDF")
    mainGlyph: "print"
    mainEnabled: page.care.pageCount > 0
    busy: page.care.busy
    helperText: page.care.canShare && !page.care.missing ? qsTr("Share") : ""
    helperGlyph: "send"
    onMain: chooser.open()
    onHelper: page.care.share()
    lower: SheetOutcome {
        width: parent.width
        model: page.care
    }

    GoneStrip {
        width: parent.width
        visible: page.care.missing
    }
    MessageStrip {
        width: parent.width
        visible: page.care.gap !== ""
        happened: page.care.gap
    }
    MessageStrip {
        width: parent.width
        visible: page.care.lacksContact && !page.care.missing
        tone: "warn"
        happened: qsTr("The sheet does not say how to reach you.")
        advice: qsTr("A line for that can be kept with the room.")
        actionText: qsTr("Write it down")
        onActed: edit.begin()
    }
    SheetView {
        width: parent.width
        model: page.care
        onCloser: page.kit.navigation.pushed("SheetCloserPage", {
            "model": page.care
        })
    }
    FileChooser {
        id: chooser
        folders: true
        title: qsTr("Where to save the care sheet")
        onFolderChosen: folder => page.care.saveTo(folder)
    }
    RoomEditSheet {
        id: edit
        model: RoomModel {
            desk: page.kit.desk
        }
    }
}
