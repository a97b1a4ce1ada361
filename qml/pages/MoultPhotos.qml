pragma ComponentBehavior: Bound
import QtQuick
import QtQuick.Layouts
import Burrow.Components
import Burrow.ViewModels

// The photos of a moult that is being entered, and the ways to more of them.
Column {
    id: photos

    required property MoultModel model

    readonly property bool none: photos.model.photos.length === 0

    signal cameraWanted
    signal filesWanted

    spacing: Tokens.betweenStrips

    Strip {
        width: parent.width
        spacing: Tokens.space12

        Heading {
            width: parent.width
            level: 2
            text: photos.none && !photos.model.adding ? qsTr("Photograph it before it dries") : qsTr("Photos")
        }
        StepText {
            width: parent.width
            visible: photos.none
            step: Tokens.reason
            color: Tokens.inkSoft
            text: qsTr("Spread the skin out, inside up. The sex shows between the front pair of book lungs.")
        }
        StepText {
            width: parent.width
            visible: text !== ""
            step: Tokens.reason
            color: Tokens.warn
            text: photos.model.caution
        }
        Flow {
            width: parent.width
            visible: !photos.none || photos.model.developing
            spacing: Tokens.betweenTargets

            Repeater {
                model: photos.model.photos

                MoultPhoto {
                    required property int index
                    required property var modelData

                    source: modelData.picture
                    name: qsTr("Photo %1").arg(index + 1)
                    note: modelData.state
                    dried: modelData.dried
                    onTurned: photos.model.turnDried(index)
                    onRemoved: photos.model.removePhoto(index)
                }
            }
            StepText {
                visible: photos.model.developing
                step: Tokens.reason
                color: Tokens.inkSoft
                text: qsTr("Looking the photo over")
            }
        }
        GridLayout {
            width: parent.width
            columns: Tokens.roundCompact ? 1 : 2
            columnSpacing: Tokens.betweenTargets
            rowSpacing: Tokens.betweenTargets

            ActionButton {
                Layout.fillWidth: true
                Layout.preferredWidth: 1
                kind: "secondary"
                glyph: "camera"
                text: photos.none ? qsTr("Take a photo") : qsTr("One more")
                enabled: photos.model.canTakeMore
                onActivated: photos.cameraWanted()
            }
            ActionButton {
                Layout.fillWidth: true
                Layout.preferredWidth: 1
                kind: "secondary"
                glyph: "image"
                text: qsTr("Choose one")
                enabled: photos.model.canTakeMore
                onActivated: photos.filesWanted()
            }
        }
    }
    // Why a photo can't be measured. It is kept all the same.
    Repeater {
        model: photos.model.photos

        MessageStrip {
            required property var modelData
            required property int index

            width: photos.width
            visible: modelData.trouble !== ""
            happened: qsTr("Photo %1").arg(index + 1)
            safe: modelData.trouble
            advice: photos.model.adding ? qsTr("It is kept all the same.") : qsTr("It is kept all the same, and sizes can be typed below.")
        }
    }
    MessageStrip {
        width: parent.width
        visible: photos.model.photoTrouble !== ""
        tone: "stop"
        happened: photos.model.photoTrouble
        safe: photos.model.adding ? "" : qsTr("The moult can be saved without it.")
    }
}
