import QtQuick
import Burrow.Components
import Burrow.Ports

// A photo as a control: in the dim theme it is dark and warm until it is touched. `fills` cuts it to
// the box, else the whole of it shows. Emits activated().
PressArea {
    id: box

    required property url source
    property int longestSide: 1600
    property bool bright: false
    readonly property bool warm: !Tokens.day && !box.bright

    corner: Tokens.radiusPaper
    padding: 0

    background: Rectangle {
        color: Tokens.well
        radius: Tokens.radiusPaper
        border.width: Tokens.lineHairline
        border.color: Tokens.stripEdge
    }
    contentItem: PhotoView {
        source: box.source
        longestSide: box.longestSide
        warm: box.warm
        Accessible.ignored: true

        StepText {
            anchors.centerIn: parent
            width: parent.width - Tokens.space16
            horizontalAlignment: Text.AlignHCenter
            visible: (parent as PhotoView).missing
            step: Tokens.reason
            color: Tokens.inkSoft
            text: qsTr("This photo is not on this device")
            Accessible.ignored: true
        }
    }
}
