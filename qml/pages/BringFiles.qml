pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// The files that were chosen. While they may still be put back, each has a cross.
Column {
    id: files

    required property BringModel bring
    property bool removable: true

    spacing: Tokens.betweenStrips

    Repeater {
        model: files.bring.files

        Strip {
            id: file

            required property int index
            required property var modelData

            width: files.width

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
        }
    }
}
