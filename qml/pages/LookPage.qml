import QtQuick
import Burrow.Components
import Burrow.ViewModels

// How the app looks and how it is handled, on this device.
BookPage {
    id: page

    readonly property Settings settings: page.kit.settings
    readonly property LookModel look: LookModel {
        settings: page.kit.settings
    }

    title: qsTr("Look and handling")
    sub: qsTr("Kept on this device, not in the book")

    SwitchRow {
        width: parent.width
        text: qsTr("Daylight")
        sub: qsTr("For a table outdoors; off is for a dim room")
        wordOn: qsTr("On")
        wordOff: qsTr("Off")
        on: page.settings.daylight
        onToggled: on => page.settings.daylight = on
    }
    Strip {
        width: parent.width

        StepRow {
            width: parent.width
            name: qsTr("Text size")
            value: page.look.textSize
            lessText: qsTr("Smaller text")
            moreText: qsTr("Larger text")
            canLess: page.look.canSmaller
            canMore: page.look.canLarger
            onLess: page.look.smaller()
            onMore: page.look.larger()
        }
    }
    SwitchRow {
        width: parent.width
        text: qsTr("Left hand")
        sub: qsTr("Puts what is tapped most at the left")
        wordOn: qsTr("On")
        wordOff: qsTr("Off")
        on: page.settings.leftHanded
        onToggled: on => page.settings.leftHanded = on
    }
    SwitchRow {
        width: parent.width
        text: qsTr("Less motion")
        sub: qsTr("Pages change at once")
        wordOn: qsTr("On")
        wordOff: qsTr("Off")
        on: page.settings.reducedMotion
        onToggled: on => page.settings.reducedMotion = on
    }
    SwitchRow {
        width: parent.width
        text: qsTr("Scan from tub to tub")
        sub: qsTr("After a tap in a round: on for the scanner, off for the next tub on the shelf")
        wordOn: qsTr("On")
        wordOff: qsTr("Off")
        on: page.settings.scanNext
        onToggled: on => page.settings.scanNext = on
    }
    Strip {
        width: parent.width
        spacing: Tokens.space8

        StripTitle {
            width: parent.width
            name: qsTr("Undo stays for")
        }
        ChoiceTiles {
            width: parent.width
            name: qsTr("Undo stays for")
            options: [
                {
                    "word": qsTr("8 seconds"),
                    "sub": ""
                },
                {
                    "word": qsTr("20 seconds"),
                    "sub": ""
                },
                {
                    "word": qsTr("Next tap"),
                    "sub": ""
                }
            ]
            current: page.look.undoTime
            onChosen: index => page.look.undoTime = index
        }
    }
}
