import QtQuick
import Burrow.Components

// Every shelf is looked after, or nothing of it is among the part that is shown.
EmptyStrip {
    id: nothing

    property bool part: false

    drawing: "shelf"
    sentence: ""
    detail: nothing.part ? qsTr("The other lines are left out.")
                         : qsTr("Every tub on every shelf is looked after for today.")
}
