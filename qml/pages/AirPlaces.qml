pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components

// Places of the room to choose from: `choices` is [{name, place}]. Emits chosen(place).
Flow {
    id: places

    property var choices: []

    signal chosen(string place)

    spacing: Tokens.betweenTargets

    Repeater {
        model: places.choices

        ActionButton {
            required property var modelData

            kind: "secondary"
            text: modelData.name
            width: Math.min(implicitWidth, places.width)
            onActivated: places.chosen(modelData.place)
        }
    }
}
