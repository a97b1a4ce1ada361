import QtQuick
import Burrow.Components

Sheet {
    OutcomeGrid {
        width: parent.width

        OutcomeButton {
            text: "Refused"
            glyph: "cross"
        }
        OutcomeButton {
            text: "Left it in"
            glyph: "left-in"
        }
        OutcomeButton {
            text: "Premoult"
            glyph: "premoult"
        }
        OutcomeButton {
            text: "Moulted"
            glyph: "moult"
            enabled: false
        }
    }
    Slab {
        width: parent.width
        text: "Took it"
        sub: "then scan the next tub"
    }
    Slab {
        width: parent.width
        text: "Leave it"
        sub: "then scan the next tub"
        held: true
    }
    Slab {
        width: parent.width
        text: "Took it"
        sub: "choose a prey first"
        enabled: false
    }
    ActionButton {
        width: parent.width
        tall: true
        text: "Tag an animal"
        glyph: "plus"
    }
    ActionButton {
        width: parent.width
        text: "Save moult"
        glyph: "check"
    }
    ActionButton {
        width: parent.width
        text: "Save moult"
        busy: true
        busyText: "Saving"
    }
    ActionButton {
        kind: "plain"
        text: "Next difference"
        glyph: "chevron"
    }
    Row {
        spacing: Tokens.betweenTargets

        SquareButton {
            glyph: "minus"
            text: "Less"
        }
        SquareButton {
            glyph: "plus"
            text: "More"
            enabled: false
        }
        PressArea {
            width: 56
            height: 56
            text: "focus"

            background: Rectangle {
                radius: 16
                color: Tokens.raised

                FocusRing {
                    shown: true
                }
            }
        }
    }
}
