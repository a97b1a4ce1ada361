import QtQuick
import Burrow.Components
import Burrow.ViewModels

// Whether this device reminds of what is due, and when.
BookPage {
    id: page

    readonly property Reminders reminders: page.kit.reminders

    title: qsTr("Reminders")
    sub: qsTr("Kept on this device, not in the book")

    SwitchRow {
        width: parent.width
        text: qsTr("Remind me")
        sub: qsTr("Once a day for the round, at once of what cannot wait for it")
        wordOn: qsTr("On")
        wordOff: qsTr("Off")
        on: page.reminders.on
        onToggled: on => page.reminders.on = on
    }
    Strip {
        width: parent.width
        visible: page.reminders.on

        StepRow {
            width: parent.width
            name: qsTr("The round")
            value: page.reminders.roundTime
            lessText: qsTr("Half an hour earlier for the round")
            moreText: qsTr("Half an hour later for the round")
            onLess: page.reminders.moveRound(-1)
            onMore: page.reminders.moveRound(1)
        }
        StepRow {
            width: parent.width
            name: qsTr("Quiet from")
            value: page.reminders.quietFrom
            lessText: qsTr("Quiet half an hour earlier")
            moreText: qsTr("Quiet half an hour later")
            onLess: page.reminders.moveQuietFrom(-1)
            onMore: page.reminders.moveQuietFrom(1)
        }
        StepRow {
            width: parent.width
            name: qsTr("Quiet until")
            value: page.reminders.quietUntil
            lessText: qsTr("Quiet ends half an hour earlier")
            moreText: qsTr("Quiet ends half an hour later")
            onLess: page.reminders.moveQuietUntil(-1)
            onMore: page.reminders.moveQuietUntil(1)
        }
    }
    Strip {
        width: parent.width
        visible: page.reminders.on
        spacing: Tokens.space8

        StepText {
            objectName: "reminderState"
            width: parent.width
            step: Tokens.bodyStrong
            text: page.reminders.state
        }
        StepText {
            width: parent.width
            visible: page.reminders.nextText !== ""
            step: Tokens.reason
            color: Tokens.inkSoft
            text: page.reminders.nextTitle
        }
        StepText {
            width: parent.width
            visible: page.reminders.nextText !== ""
            step: Tokens.reason
            color: Tokens.inkSoft
            text: page.reminders.nextText
        }
    }
}
