pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// A logger's file for a place: chosen, looked at, and only then taken in.
BookPage {
    id: page

    property string place

    readonly property AirModel places: AirModel {
        desk: page.kit.desk
    }
    readonly property AirFileModel file: AirFileModel {
        desk: page.kit.desk
        onTaken: page.kit.navigation.replaced("AirPlacePage", {
            "place": page.file.place
        })
    }
    readonly property bool placed: page.file.place !== ""

    title: qsTr("A logger's file")
    sub: page.placed ? page.file.placeName : qsTr("Where does the logger lie?")
    busy: page.file.busy
    mainText: page.file.any ? qsTr("Take it in") : page.placed ? qsTr("Choose a file") : ""
    mainGlyph: page.file.any ? "check" : "folder"
    helperText: page.file.any ? qsTr("Other file") : ""
    helperGlyph: "folder"
    onMain: {
        if (page.file.any)
            page.file.takeIn();
        else
            chooser.open();
    }
    onHelper: chooser.open()
    Component.onCompleted: page.file.place = page.place

    Strip {
        width: parent.width
        visible: !page.placed
        spacing: Tokens.space8

        AirPlaces {
            width: parent.width
            choices: page.places.choices
            onChosen: place => page.file.place = place
        }
        TextLine {
            id: other
            width: parent.width
            label: qsTr("Another place")
            hint: qsTr("A room, a rack or a shelf")
            clearText: qsTr("Empty the place")
            field.maximumLength: 80
            onAccepted: page.file.place = other.text.trim()
        }
        ActionButton {
            width: parent.width
            kind: "secondary"
            glyph: "check"
            enabled: other.text.trim() !== ""
            text: qsTr("It lies there")
            onActivated: page.file.place = other.text.trim()
        }
    }
    MessageStrip {
        width: parent.width
        visible: page.file.trouble !== ""
        tone: "stop"
        happened: page.file.trouble
    }
    Strip {
        width: parent.width
        visible: page.file.asksDates
        spacing: Tokens.space8

        StripTitle {
            width: parent.width
            name: qsTr("What comes first in its dates")
        }
        ChoiceTiles {
            width: parent.width
            name: qsTr("What comes first in its dates")
            options: [{
                    "word": qsTr("Day")
                }, {
                    "word": qsTr("Month")
                }]
            current: page.file.dates
            onChosen: index => page.file.dates = index
        }
    }
    Strip {
        width: parent.width
        visible: page.file.contents.length > 0
        spacing: Tokens.space4

        StripTitle {
            width: parent.width
            name: page.file.fileName
        }
        Repeater {
            model: page.file.contents

            StepText {
                required property string modelData

                width: parent?.width ?? 0
                step: Tokens.body
                text: modelData
            }
        }
        StepText {
            width: parent.width
            visible: page.file.any
            step: Tokens.reason
            color: Tokens.inkSoft
            text: qsTr("Nothing is written yet.")
        }
    }
    Strip {
        width: parent.width
        visible: page.file.badText !== ""
        bar: Tokens.warn
        spacing: Tokens.space8

        StepText {
            width: parent.width
            step: Tokens.bodyStrong
            color: Tokens.warn
            text: page.file.badText
            Accessible.role: Accessible.AlertMessage
            Accessible.name: text
        }
        Repeater {
            model: page.file

            FactRow {
                required property var model

                width: parent?.width ?? 0
                name: model.where
                value: model.why
            }
        }
        StepText {
            width: parent.width
            visible: text !== ""
            step: Tokens.reason
            text: page.file.moreBad
        }
    }
    EmptyStrip {
        width: parent.width
        visible: page.placed && page.file.contents.length === 0 && page.file.trouble === ""
        drawing: "line"
        sentence: qsTr("Choose what the logger wrote")
        detail: qsTr("A CSV file with the time, the temperature, the humidity, or both. What the book has already is not written twice.")
    }
    FileChooser {
        id: chooser
        title: qsTr("A logger's file")
        filters: [qsTr("Tables (*.csv *.tsv *.txt)"), qsTr("All files (*)")]
        onFilesChosen: files => page.file.choose(files)
    }
}
