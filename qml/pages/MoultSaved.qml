import QtQuick
import Burrow.Components
import Burrow.ViewModels

// After a moult was saved: until when feeding is held back, and what may come next.
Column {
    id: saved

    required property MoultModel model

    signal sexWanted
    signal measureWanted
    signal photosWanted

    spacing: Tokens.betweenStrips

    MessageStrip {
        width: parent.width
        tone: "ok"
        happened: saved.model.adding ? qsTr("The photos are saved.") : qsTr("The moult is saved.")
    }
    MessageStrip {
        width: parent.width
        visible: saved.model.lostPhotos !== ""
        tone: "stop"
        happened: saved.model.lostPhotos
        actionText: qsTr("Keep the photos now")
        onActed: saved.model.keepPhotosAgain()
    }
    Strip {
        width: parent.width

        Row {
            width: parent.width
            spacing: Tokens.space12

            Punch {
                id: punch
                kind: saved.model.nextPunch
            }
            ReasonText {
                width: parent.width - punch.width - Tokens.space12
                verb: saved.model.verb
                reason: saved.model.reason
            }
        }
    }
    Item {
        width: 1
        height: Tokens.space8
    }
    ActionButton {
        width: parent.width
        visible: saved.model.toMeasure !== ""
        kind: "secondary"
        glyph: "ruler"
        text: qsTr("Measure it in the photo")
        onActivated: saved.measureWanted()
    }
    ActionButton {
        width: parent.width
        visible: saved.model.toSex !== ""
        kind: "secondary"
        glyph: "search"
        text: qsTr("Look at it for the sex")
        onActivated: saved.sexWanted()
    }
    ActionButton {
        width: parent.width
        kind: "secondary"
        glyph: "camera"
        text: qsTr("Add photos")
        onActivated: saved.photosWanted()
    }
}
