pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// The copies of the book on this device: made by themselves, by hand, and the way back to one.
BookPage {
    id: page

    readonly property BackupsModel backups: BackupsModel {
        desk: page.kit.desk
    }
    readonly property bool looking: page.backups.chosen >= 0

    title: page.looking ? qsTr("Go back to a copy") : qsTr("Copies of the book")
    sub: page.looking ? page.backups.chosenTitle : qsTr(
                            "One a day, and one before every file that is taken in")
    busy: page.backups.busy
    backHeld: page.looking
    mainText: page.looking ? qsTr("Go back to it") : qsTr("Make one now")
    mainGlyph: page.looking ? "undo" : "check"
    onBack: page.backups.putAway()
    onMain: {
        if (page.looking)
            page.backups.goBack();
        else
            page.backups.makeNow();
    }

    MessageStrip {
        width: parent.width
        visible: page.backups.trouble !== ""
        tone: "stop"
        happened: page.backups.trouble
    }
    MessageStrip {
        width: parent.width
        visible: page.backups.told !== ""
        tone: "ok"
        happened: page.backups.told
    }
    FactStrip {
        width: parent.width
        facts: page.looking ? page.backups.preview : []
    }
    MessageStrip {
        width: parent.width
        visible: page.looking
        happened: qsTr("The book goes back to what it was then.")
        safe: qsTr("As it is now, it becomes a copy itself first: you can come back here.")
        advice: qsTr("What other phones have of it comes back with their next file.")
    }
    Column {
        width: parent.width
        visible: !page.looking
        spacing: Tokens.betweenStrips

        Repeater {
            model: page.backups.copies

            WayRow {
                required property int index
                required property var modelData

                width: page.contentWidth
                glyph: "book"
                text: modelData.when
                sub: modelData.why + ", " + modelData.size
                onActivated: page.backups.choose(index)
            }
        }
    }
    EmptyStrip {
        width: parent.width
        visible: page.backups.ready && page.backups.copies.length === 0
        drawing: "line"
        sentence: qsTr("There is no copy yet")
        detail: qsTr("The first is made by itself today. They stay on this device: a file that you make and keep elsewhere outlives it.")
    }
}
