import QtQuick
import Burrow.Components

Sheet {
    Flow {
        width: parent.width
        spacing: 14

        Repeater {
            model: ["due", "shelves", "scan", "pairings", "stall", "room", "back", "chevron", "chevron-down", "chevron-up", "more", "search", "filter", "sort", "plus", "minus", "check", "cross", "undo", "redo", "edit", "remove", "tools", "swap", "move", "lock", "torch", "keyboard", "camera", "photo", "image", "look", "hidden", "ruler", "premoult", "moult", "left-in", "hardening", "group", "sac", "lot", "feed", "part", "weight", "ended", "water", "damp", "warmth", "enclosure", "rehouse", "quarantine", "note", "sheet", "tag", "print", "send", "bring-in", "folder", "calendar", "clock", "bell", "book", "qr", "price", "caution", "info", "help", "sun", "moon", "text-size", "hand", "motion", "sound", "vibrate"]

            Glyph {
                required property string modelData

                name: modelData
            }
        }
    }
    Row {
        spacing: 14

        Repeater {
            model: ["scan", "torch", "water", "premoult", "caution"]

            Glyph {
                required property string modelData

                width: 48
                height: 48
                color: Tokens.act
                name: modelData
            }
        }
    }
}
