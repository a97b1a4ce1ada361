import Burrow.Components

// What could not be done, in words.
MessageStrip {
    happened: ""
    tone: "stop"
    actionText: qsTr("Close")
}
