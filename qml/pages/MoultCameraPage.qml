import QtQuick
import QtQuick.Layouts
import Burrow.Components
import Burrow.Ports
import Burrow.ViewModels

// The camera over a moult: as many photos as it takes.
Rectangle {
    id: page

    required property Kit kit
    required property MoultModel moult

    readonly property Scanner scanner: page.kit.scanner
    readonly property bool looking: page.scanner?.state === Scanner.Running
    // The photo that was taken last.
    readonly property var last: page.moult.photos[page.moult.photos.length - 1] ?? null

    readonly property MatHintModel hint: MatHintModel {
        desk: page.kit.desk
        scanner: page.scanner
    }

    color: Tokens.ground
    Component.onCompleted: page.scanner?.start()
    Component.onDestruction: page.scanner?.stop()

    Viewfinder {
        anchors.top: parent.top
        anchors.bottom: panel.top
        width: parent.width
        scanner: page.scanner
        // On the mat's own squares they would say nothing.
        brackets: false
    }
    Column {
        anchors.bottom: panel.top
        anchors.bottomMargin: Tokens.space16
        anchors.horizontalCenter: parent.horizontalCenter
        width: Math.min(parent.width - 2 * Tokens.pageMargin, Tokens.contentWidth)
        spacing: Tokens.betweenStrips

        MatHint {
            width: parent.width
            hint: page.hint
        }
        MessageStrip {
            width: parent.width
            visible: page.moult.cameraTrouble !== ""
            tone: "stop"
            happened: page.moult.cameraTrouble
        }
        MessageStrip {
            width: parent.width
            visible: page.moult.filing.note !== ""
            tone: "ok"
            happened: page.moult.filing.note
        }
        MessageStrip {
            width: parent.width
            visible: page.moult.photoTrouble !== ""
            tone: "stop"
            happened: page.moult.photoTrouble
        }
        MessageStrip {
            width: parent.width
            visible: page.last?.read ?? false
            tone: (page.last?.trouble ?? "") === "" ? "ok" : "warn"
            happened: page.last?.state ?? ""
            safe: page.last?.trouble ?? ""
        }
        Flow {
            width: parent.width
            visible: page.moult.photos.length > 0
            spacing: Tokens.betweenTargets

            Repeater {
                model: page.moult.photos

                PhotoBox {
                    required property int index
                    required property var modelData

                    width: Tokens.shelfTarget
                    height: Tokens.shelfTarget
                    source: modelData.picture
                    text: qsTr("Photo %1. %2").arg(index + 1).arg(modelData.state)
                    onActivated: bright = !bright
                }
            }
        }
    }
    Rectangle {
        id: panel
        anchors.bottom: parent.bottom
        width: parent.width
        height: column.height + Tokens.bottomInset
        color: Tokens.raised

        Rectangle {
            width: parent.width
            height: Tokens.lineControl
            color: Tokens.barEdge
        }
        Column {
            id: column
            x: Math.round((parent.width - width) / 2)
            width: Math.min(parent.width - 2 * Tokens.pageMargin, Tokens.contentWidth)
            topPadding: Tokens.space16
            bottomPadding: Tokens.space16
            spacing: Tokens.space12

            ActionButton {
                width: parent.width
                tall: true
                glyph: "camera"
                text: qsTr("Take the photo")
                enabled: page.looking && page.moult.canTakeMore
                busy: page.kit.photographer?.busy ?? false
                busyText: qsTr("Hold still")
                onActivated: page.moult.takePhoto()
            }
            SwitchRow {
                width: parent.width
                text: qsTr("The moult has dried")
                wordOn: qsTr("yes")
                wordOff: qsTr("no")
                on: page.moult.dried
                onToggled: on => page.moult.dried = on
            }
            RowLayout {
                width: parent.width
                spacing: Tokens.betweenTargets

                ActionButton {
                    Layout.fillWidth: true
                    Layout.preferredWidth: 1
                    visible: page.scanner?.torchAvailable ?? false
                    kind: page.scanner?.torchOn ? "primary" : "secondary"
                    glyph: "torch"
                    text: page.scanner?.torchOn ? qsTr("Torch low") : qsTr("Torch")
                    onActivated: page.scanner.torchOn = !page.scanner.torchOn
                }
                ActionButton {
                    Layout.fillWidth: true
                    Layout.preferredWidth: 1
                    kind: "secondary"
                    glyph: page.moult.photos.length > 0 ? "check" : "back"
                    text: page.moult.photos.length > 0 ? qsTr("Done") : qsTr("Back")
                    onActivated: page.kit.navigation.backed()
                }
            }
        }
    }
}
