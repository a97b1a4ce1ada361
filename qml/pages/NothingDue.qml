import Burrow.Components

// Every shelf is looked after.
EmptyStrip {
    drawing: "shelf"
    sentence: ""
    detail: qsTr("Every tub on every shelf is looked after for today.")
}
