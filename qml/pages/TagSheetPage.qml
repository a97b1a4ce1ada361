import QtQuick
import Burrow.Components
import Burrow.ViewModels

// Sheets of tags to print: for everyone, a shelf, some, or blank ones that are bound when first scanned.
BookPage {
    id: page

    property list<string> subjects

    readonly property TagSheetModel tags: TagSheetModel {
        desk: page.kit.desk
        printer: page.kit.printer
        sharer: page.kit.sharer
        subjects: page.subjects
    }

    title: qsTr("Tags to print")
    sub: page.tags.summary
    mainText: qsTr("Save PDF")
    mainGlyph: "print"
    mainEnabled: page.tags.pageCount > 0 && page.tags.blankError === ""
    busy: page.tags.busy
    helperText: page.tags.canShare ? qsTr("Share") : ""
    helperGlyph: "send"
    onMain: chooser.open()
    onHelper: page.tags.share()
    lower: SheetOutcome {
        width: parent.width
        model: page.tags
    }

    Strip {
        width: parent.width
        spacing: Tokens.space8

        StripTitle {
            width: parent.width
            name: qsTr("For whom")
        }
        ChoiceTiles {
            width: parent.width
            name: qsTr("For whom")
            options: page.tags.kinds
            current: page.tags.kind
            onChosen: index => page.tags.kind = index
        }
    }
    PickRow {
        width: parent.width
        visible: page.tags.byShelf
        name: qsTr("Shelf")
        value: page.tags.shelfName
        onActivated: shelves.open()
    }
    TextLine {
        width: parent.width
        visible: page.tags.blank
        code: true
        label: qsTr("How many blank tags")
        hint: qsTr("Hang them up first; each is bound to its animal at its first scan.")
        error: page.tags.blankError
        clearText: qsTr("Empty the number")
        text: page.tags.blankCount
        field.inputMethodHints: Qt.ImhDigitsOnly
        field.maximumLength: 6
        onEdited: page.tags.blankCount = text
    }
    Strip {
        width: parent.width
        spacing: Tokens.space8

        StripTitle {
            width: parent.width
            name: qsTr("Paper")
        }
        ChoiceTiles {
            width: parent.width
            name: qsTr("Paper")
            options: [
                {
                    "word": "A4",
                    "sub": qsTr("210 by 297 mm")
                },
                {
                    "word": "Letter",
                    "sub": qsTr("8.5 by 11 in")
                }
            ]
            current: page.tags.paper
            onChosen: index => page.tags.paper = index
        }
    }
    StepText {
        width: parent.width
        topPadding: step.above + Tokens.space4
        bottomPadding: Tokens.space4
        step: Tokens.reason
        color: Tokens.inkSoft
        text: qsTr("Print at full size. The bar on the sheet measures 50 mm when it came out right.")
    }
    SheetView {
        width: parent.width
        model: page.tags
        onCloser: page.kit.navigation.pushed("SheetCloserPage", {
            "model": page.tags
        })
    }
    FileChooser {
        id: chooser
        folders: true
        title: qsTr("Where to save the tags")
        onFolderChosen: folder => page.tags.saveTo(folder)
    }
    ShelfSheet {
        id: shelves
        shelves: page.tags.shelves
        onChosen: index => page.tags.shelf = index
    }
}
