import QtQuick
import Burrow.Components

Sheet {
    margin: 0
    spacing: 32

    PlaceBar {
        width: parent.width
        scanText: "Scan"
        places: [
            {
                word: "Due",
                glyph: "due"
            },
            {
                word: "Shelves",
                glyph: "shelves"
            },
            {
                word: "Pairings",
                glyph: "pairings"
            },
            {
                word: "Stall",
                glyph: "stall"
            }
        ]
    }
    ContextBar {
        width: parent.width
        backText: "Back"
        mainText: "Log for 214"
        mainGlyph: "plus"
        helperText: "Scan"
    }
    ContextBar {
        width: parent.width
        backText: "Later"
        mainText: "Finish"
        mainGlyph: "check"
        busy: true
        busyText: "Finishing"
        helperText: "Undo all"
        helperGlyph: "undo"
    }
    ContextBar {
        width: parent.width
        backText: "Back"
    }
    UndoBar {
        x: 16
        width: parent.width - 32
        tag: "214"
        message: "took 1 locust, and the dish was topped up as well"
        undoText: "Undo"
        countdown: "%1 seconds to undo"
        duration: 8000000
    }
    UndoBar {
        x: 16
        width: parent.width - 32
        undoText: "Undo"
    }
}
