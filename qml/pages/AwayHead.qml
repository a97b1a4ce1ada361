import QtQuick
import Burrow.Components
import Burrow.ViewModels

// The head of the page about an absence: its days, whom the sitter calls, and the sheet.
Column {
    id: head

    required property Kit kit
    required property AwayModel away

    signal daysAsked
    signal callAsked
    signal contactAsked

    spacing: Tokens.betweenStrips

    PageHead {
        width: parent.width
        title: qsTr("Away")
        sub: head.away.lengthText === "" ? "" : head.away.lengthText + ". " + head.away.summary
        trouble: head.kit.desk.trouble
        onDismissed: head.kit.desk.dismissTrouble()
    }
    Strip {
        width: parent.width

        StepRow {
            width: parent.width
            name: qsTr("First day away")
            value: head.away.fromText
            lessText: qsTr("Leave a day earlier")
            moreText: qsTr("Leave a day later")
            canLess: head.away.canLeaveEarlier
            tappable: true
            onLess: head.away.stepFrom(-1)
            onMore: head.away.stepFrom(1)
            onOpened: head.daysAsked()
        }
        Hairline {
            width: parent.width
        }
        StepRow {
            width: parent.width
            name: qsTr("Last day away")
            value: head.away.toText
            lessText: qsTr("Be back a day earlier")
            moreText: qsTr("Be back a day later")
            canLess: head.away.canReturnEarlier
            tappable: true
            onLess: head.away.stepTo(-1)
            onMore: head.away.stepTo(1)
            onOpened: head.daysAsked()
        }
    }
    StepText {
        width: parent.width
        visible: head.away.lastMealText !== ""
        step: Tokens.reason
        text: head.away.lastMealText
    }
    MessageStrip {
        width: parent.width
        visible: head.away.lacksContact
        tone: "warn"
        happened: qsTr("The sheet does not say how to reach you.")
        advice: qsTr("A line for that can be kept with the room.")
        actionText: qsTr("Write it down")
        onActed: head.contactAsked()
    }
    WayRow {
        width: parent.width
        glyph: "hand"
        text: qsTr("Whom else the sitter calls")
        sub: head.away.call === "" ? qsTr("Somebody who knows the animals") : head.away.call
        endGlyph: "edit"
        onActivated: head.callAsked()
    }
    SheetView {
        width: parent.width
        model: head.away
        onCloser: head.kit.navigation.pushed("SheetCloserPage", {
            "model": head.away
        })
    }
    StepText {
        width: parent.width
        bottomPadding: Tokens.space8
        step: Tokens.reason
        color: Tokens.est
        text: qsTr("Days, amounts and moults to come are estimates from your records.")
    }
}
