pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// The first steps, while there is no book: an animal of one's own, a file, or a look around. A book
// that can't be opened says why here.
ScrollPage {
    id: page

    required property Kit kit

    readonly property bool refused: page.kit.desk.state === Desk.Refused
    readonly property bool stacked: Tokens.rowsStack

    function start(then: string) {
        page.kit.navigation.pushed("NewRoomPage", {
            "then": then
        });
    }

    MessageStrip {
        width: parent.width
        visible: page.refused
        tone: "stop"
        happened: page.kit.desk.refusal
        actionText: page.kit.bookcase.hasOwnBook ? qsTr("Try again") : ""
        onActed: page.kit.bookcase.openLast()
    }
    EmptyStrip {
        width: parent.width
        sentence: qsTr("Tag your first tub")
        detail: qsTr("Give it a number and a species. The line under the label fills in as it feeds and moults.")
        actionText: qsTr("Tag an animal")
        actionGlyph: "plus"
        onActed: page.start("AnimalFormPage")
    }
    Item {
        width: 1
        height: Tokens.space4
    }
    Flow {
        width: parent.width
        spacing: Tokens.betweenTargets

        Choice {
            glyph: "bring-in"
            text: qsTr("Bring in a table")
            onActivated: page.start("BringPage")
        }
        Choice {
            glyph: "swap"
            text: qsTr("From my other phone")
            onActivated: page.kit.navigation.pushed("JoinPage", {})
        }
        Choice {
            width: page.contentWidth
            glyph: "shelves"
            text: qsTr("Look at a demo")
            busy: page.kit.bookcase.busy
            busyText: qsTr("Making the room")
            onActivated: page.kit.bookcase.openDemo()
        }
    }
    StepText {
        width: parent.width
        topPadding: step.above + Tokens.space8
        step: Tokens.reason
        color: Tokens.inkSoft
        text: qsTr("Everything stays on this device. Nothing is sent unless you hand it over.")
    }

    component Choice: ActionButton {
        width: page.stacked ? page.contentWidth : (page.contentWidth - Tokens.betweenTargets) / 2
        kind: "secondary"
    }
}
