import QtQuick
import Burrow.Components
import Burrow.ViewModels

// What looks ahead (evenings, prey, an absence), and what can be printed: tags for the room, the mat for
// moults, and the care sheet of an animal by its number.
Column {
    id: sheets

    required property Kit kit
    required property RoomModel room

    spacing: Tokens.betweenStrips

    WayRow {
        width: parent.width
        glyph: "clock"
        text: qsTr("Evenings")
        sub: qsTr("Whom to feed on which day, in the fewest visits")
        onActivated: sheets.kit.navigation.pushed("EveningsPage", {})
    }
    WayRow {
        width: parent.width
        glyph: "feed"
        text: qsTr("Prey")
        sub: qsTr("What is in stock, and what to buy")
        onActivated: sheets.kit.navigation.pushed("PreyPage", {})
    }
    WayRow {
        width: parent.width
        glyph: "hand"
        text: qsTr("Away")
        sub: qsTr("What a sitter does, and the sheet for it")
        onActivated: sheets.kit.navigation.pushed("AwayPage", {})
    }
    WayRow {
        width: parent.width
        glyph: "tag"
        text: qsTr("Tags to print")
        sub: qsTr("For everyone, for a shelf, or blank")
        onActivated: sheets.kit.navigation.pushed("TagSheetPage", {})
    }
    WayRow {
        width: parent.width
        glyph: "ruler"
        text: qsTr("Mat for moults")
        sub: qsTr("To print once, so that photos of moults can be measured")
        onActivated: sheets.kit.navigation.pushed("MatPage", {})
    }
    Strip {
        width: parent.width
        spacing: Tokens.space8

        TextLine {
            id: number
            width: parent.width
            code: true
            label: qsTr("Care sheet for number")
            error: sheets.room.findTrouble
            clearText: qsTr("Empty the number")
            field.maximumLength: 40
            onAccepted: sheets.room.find(number.text)
        }
        ActionButton {
            width: parent.width
            kind: "secondary"
            glyph: "sheet"
            enabled: number.text.trim() !== ""
            text: qsTr("Open the care sheet")
            onActivated: sheets.room.find(number.text)
        }
    }
}
