pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// The air of one place: what it is now, how it went, what was wrong, day by day.
BookPage {
    id: page

    required property string place

    readonly property AirPlaceModel air: AirPlaceModel {
        desk: page.kit.desk
        place: page.place
    }
    readonly property AirModel places: AirModel {
        desk: page.kit.desk
        onKept: sheet.close()
    }

    title: page.air.title
    sub: page.air.wanted
    mainText: qsTr("Write a reading")
    mainGlyph: "plus"
    helperText: qsTr("Logger's file")
    helperGlyph: "bring-in"
    onMain: sheet.begin(page.place)
    onHelper: page.kit.navigation.pushed("AirFilePage", {
        "place": page.place
    })

    FactStrip {
        width: parent.width
        facts: page.air.now
    }
    Strip {
        width: parent.width
        visible: page.air.alarms.length > 0
        bar: Tokens.warn
        spacing: Tokens.space8

        Repeater {
            model: page.air.alarms

            StepText {
                required property string modelData

                width: parent?.width ?? 0
                step: Tokens.reason
                color: Tokens.warn
                text: modelData
                Accessible.role: Accessible.AlertMessage
                Accessible.name: text
            }
        }
    }
    Strip {
        width: parent.width
        spacing: Tokens.space8

        StripTitle {
            width: parent.width
            name: qsTr("How far back")
        }
        ChoiceTiles {
            width: parent.width
            name: qsTr("How far back")
            options: page.air.spans
            current: page.air.span
            onChosen: index => page.air.span = index
        }
    }
    AirPlot {
        width: parent.width
        visible: page.air.warmth.length > 0
        name: qsTr("Temperature")
        unit: qsTr("°C")
        words: page.air.warmthWords
        points: page.air.warmth
        labels: page.air.labels
        hasWanted: page.air.hasWanted
        wantedLow: page.air.wantedLow
        wantedHigh: page.air.wantedHigh
        note: page.air.hasWanted ? qsTr("Between the dashed lines all that stand here do well.") : ""
    }
    AirPlot {
        width: parent.width
        visible: page.air.humidity.length > 0
        name: qsTr("Humidity")
        unit: qsTr("%")
        words: page.air.humidityWords
        points: page.air.humidity
        labels: page.air.labels
    }
    Strip {
        width: parent.width
        visible: page.air.count > 0
        spacing: 0

        StripTitle {
            width: parent.width
            name: qsTr("Day by day")
        }
        Repeater {
            id: days
            model: page.air

            FactRow {
                required property int index
                required property var model

                width: parent?.width ?? 0
                name: model.day
                value: model.value
                sub: model.sub
                last: index === days.count - 1
            }
        }
    }
    EmptyStrip {
        width: parent.width
        visible: page.air.ready && page.air.count === 0
        drawing: "line"
        sentence: qsTr("Nothing was read in these days")
        detail: qsTr("Look further back, write a reading, or take in a logger's file.")
    }
    AirReadingSheet {
        id: sheet
        air: page.places
    }
}
