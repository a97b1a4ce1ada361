pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// The files that were chosen. While they may still be put back, each has a cross. One with columns of its
// own opens what they stand for: emits mappingAsked(file).
Column {
    id: files

    required property BringModel bring
    property bool removable: true

    signal mappingAsked(int file)

    spacing: Tokens.betweenStrips

    Repeater {
        model: files.bring.files

        Strip {
            id: file

            required property int index
            required property var modelData

            width: files.width
            bar: file.modelData.open ? Tokens.warn : "transparent"
            spacing: Tokens.space8

            Item {
                width: parent.width
                height: Math.max(words.height, away.visible ? away.height : 0)

                Column {
                    id: words
                    anchors.verticalCenter: parent.verticalCenter
                    width: parent.width - (away.visible ? away.width + Tokens.space12 : 0)

                    StepText {
                        width: parent.width
                        step: Tokens.bodyStrong
                        text: file.modelData.name
                    }
                    StepText {
                        width: parent.width
                        step: Tokens.reason
                        color: Tokens.inkSoft
                        text: file.modelData.kind
                    }
                }
                SquareButton {
                    id: away
                    anchors.right: parent.right
                    anchors.verticalCenter: parent.verticalCenter
                    visible: files.removable
                    glyph: "cross"
                    text: qsTr("Put %1 back").arg(file.modelData.name)
                    onActivated: files.bring.removeFile(file.index)
                }
            }
            ActionButton {
                id: columns
                width: parent.width
                visible: file.modelData.mapped && files.removable
                kind: file.modelData.open ? "primary" : "plain"
                text: file.modelData.open ? qsTr("Say what its columns are") : qsTr("Look at its columns")
                Accessible.name: qsTr("%1: %2").arg(columns.text).arg(file.modelData.name)
                onActivated: files.mappingAsked(file.index)
            }
        }
    }
}
