import QtQuick

// A ShelfHead that is made only where there is a name to show: most rows of a list have none.
Loader {
    id: late

    required property string name
    required property string count

    signal activated

    visible: late.active
    active: late.name !== ""
    source: Qt.resolvedUrl("ShelfHead.qml")

    Binding {
        target: late.item
        property: "name"
        value: late.name
    }
    Binding {
        target: late.item
        property: "count"
        value: late.count
    }
    Connections {
        target: late.item
        ignoreUnknownSignals: true

        function onActivated() {
            late.activated();
        }
    }
}
