pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components

// A strip of facts: `facts` is [{name, value, sub}]. Not there while there are none.
Strip {
    id: strip

    property var facts: []

    visible: strip.facts.length > 0

    Repeater {
        id: rows
        model: strip.facts

        FactRow {
            required property int index
            required property var modelData

            width: parent?.width ?? 0
            name: modelData.name
            value: modelData.value
            sub: modelData.sub
            last: index === rows.count - 1
        }
    }
}
