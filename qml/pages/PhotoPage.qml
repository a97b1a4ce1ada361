import QtQuick
import Burrow.Components
import Burrow.Ports

// Photos as large as the screen, to be looked at closely. In the dim theme a touch shows one in its
// own colours.
Rectangle {
    id: page

    required property Kit kit
    // [{url, name}]
    required property var photos
    property int at: 0
    property bool bright: false

    readonly property var shown: page.photos[page.at]
    readonly property bool several: page.photos.length > 1

    color: Tokens.ground

    ZoomPane {
        anchors.top: parent.top
        anchors.topMargin: Tokens.topInset
        anchors.bottom: lower.top
        width: parent.width
        focus: true
        view: photo
        onTapped: page.bright = !page.bright

        PhotoView {
            id: photo
            objectName: "photo"
            anchors.fill: parent
            source: page.shown.url
            warm: !Tokens.day && !page.bright
            Accessible.role: Accessible.Graphic
            Accessible.name: page.shown.name
        }
        StepText {
            anchors.centerIn: parent
            width: parent.width - 2 * Tokens.pageMargin
            horizontalAlignment: Text.AlignHCenter
            visible: photo.missing
            step: Tokens.body
            color: Tokens.inkSoft
            text: qsTr("This photo is not on this device")
        }
    }
    Column {
        id: lower
        anchors.bottom: bar.top
        x: Tokens.pageMargin
        width: parent.width - 2 * Tokens.pageMargin
        topPadding: Tokens.space12
        bottomPadding: Tokens.space12
        spacing: Tokens.space8

        StepText {
            width: parent.width
            step: Tokens.reasonStrong
            text: page.shown.name
        }
        StepText {
            width: parent.width
            visible: !Tokens.day
            step: Tokens.reason
            color: Tokens.inkSoft
            text: page.bright ? qsTr("In its own colours. Touch it to dim it.") : qsTr("Touch it for its own colours.")
        }
        Row {
            visible: page.several
            spacing: Tokens.betweenTargets

            ActionButton {
                kind: "secondary"
                text: qsTr("Before")
                enabled: page.at > 0
                onActivated: page.at -= 1
            }
            ActionButton {
                kind: "secondary"
                text: qsTr("Next")
                enabled: page.at < page.photos.length - 1
                onActivated: page.at += 1
            }
        }
    }
    ContextBar {
        id: bar
        anchors.bottom: parent.bottom
        anchors.bottomMargin: Tokens.bottomInset
        width: parent.width
        backText: qsTr("Back")
        helperText: qsTr("Whole")
        helperGlyph: "image"
        onBack: page.kit.navigation.backed()
        onHelper: photo.whole()
    }
}
