import QtQuick
import Burrow.Components

// What can't be used of a form, above its bar.
MessageStrip {
    happened: ""
    visible: happened !== ""
    tone: "stop"
}
