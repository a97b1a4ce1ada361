import QtQuick

// The place for what could not be done: empty until there is something to say.
Loader {
    id: slot

    required property string trouble

    signal dismissed

    visible: slot.active
    active: slot.trouble !== ""
    source: Qt.resolvedUrl("TroubleStrip.qml")

    Binding {
        target: slot.item
        property: "happened"
        value: slot.trouble
    }
    Connections {
        target: slot.item
        ignoreUnknownSignals: true

        function onActed() {
            slot.dismissed();
        }
    }
}
