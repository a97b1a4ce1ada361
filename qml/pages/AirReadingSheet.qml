pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// A reading of a thermometer and hygrometer, to be written down for a place.
BottomSheet {
    id: sheet

    required property AirModel air

    function begin(place: string) {
        where.text = place;
        temperature.text = "";
        humidity.text = "";
        sheet.air.clearErrors();
        sheet.open();
    }
    function keep() {
        sheet.air.write(where.text, temperature.text, humidity.text);
    }

    title: qsTr("A reading")
    closeText: qsTr("Close")
    mainText: qsTr("Keep")
    mainGlyph: "check"
    onMain: sheet.keep()

    TextLine {
        id: where
        width: parent.width
        label: qsTr("Place")
        hint: qsTr("A room, a rack or a shelf")
        error: sheet.air.placeError
        clearText: qsTr("Empty the place")
        field.maximumLength: 80
        onEdited: sheet.air.clearErrors()
    }
    AirPlaces {
        width: parent.width
        visible: where.text === ""
        choices: sheet.air.choices
        onChosen: place => {
            where.text = place;
            sheet.air.clearErrors();
        }
    }
    TextLine {
        id: temperature
        width: parent.width
        code: true
        label: qsTr("Temperature in °C")
        error: sheet.air.temperatureError
        clearText: qsTr("Empty the temperature")
        field.maximumLength: 12
        field.inputMethodHints: Qt.ImhFormattedNumbersOnly
        onEdited: sheet.air.clearErrors()
        onAccepted: sheet.keep()
    }
    TextLine {
        id: humidity
        width: parent.width
        code: true
        label: qsTr("Humidity in %")
        error: sheet.air.humidityError
        clearText: qsTr("Empty the humidity")
        field.maximumLength: 12
        field.inputMethodHints: Qt.ImhFormattedNumbersOnly
        onEdited: sheet.air.clearErrors()
        onAccepted: sheet.keep()
    }
}
