pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// The air of the room by place: the last reading of each, and what is wrong there.
BookPage {
    id: page

    readonly property AirModel air: AirModel {
        desk: page.kit.desk
        onKept: sheet.close()
    }

    title: qsTr("Air")
    sub: page.air.summary
    mainText: qsTr("Write a reading")
    mainGlyph: "plus"
    helperText: qsTr("Logger's file")
    helperGlyph: "bring-in"
    onMain: sheet.begin("")
    onHelper: page.kit.navigation.pushed("AirFilePage", {})

    Repeater {
        model: page.air

        Column {
            id: entry

            required property var model

            width: page.contentWidth
            spacing: Tokens.space4

            WayRow {
                width: parent.width
                glyph: "warmth"
                text: entry.model.name
                sub: entry.model.value === "" ? qsTr("Nothing was read within a year") : entry.model.value + ", " + entry.model.when
                onActivated: page.kit.navigation.pushed("AirPlacePage", {
                    "place": entry.model.place
                })
            }
            StepText {
                width: parent.width
                visible: text !== ""
                leftPadding: Tokens.stripPadding
                step: Tokens.reason
                color: Tokens.warn
                text: entry.model.alarm
                Accessible.role: Accessible.AlertMessage
                Accessible.name: text
            }
        }
    }
    EmptyStrip {
        width: parent.width
        visible: page.air.ready && page.air.count === 0
        drawing: "line"
        sentence: qsTr("No reading yet")
        detail: qsTr("Write down what a thermometer says, or take in a logger's file. The plan then knows heat waves and cold.")
    }
    AirReadingSheet {
        id: sheet
        air: page.air
    }
}
