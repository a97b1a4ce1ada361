import QtQuick
import Burrow.Components
import Burrow.Ports

// How long five millimetres are in a picture whose scale is known.
Rectangle {
    id: bar

    required property ZoomView view

    width: Math.max(line.width, label.width) + 2 * Tokens.space8
    height: label.height + line.height + 2 * Tokens.space8
    visible: bar.view.barLength > 0
    color: Tokens.ground
    radius: Tokens.radiusPaper
    Accessible.role: Accessible.StaticText
    Accessible.name: qsTr("A bar of 5 mm")

    StepText {
        id: label
        x: Tokens.space8
        y: Tokens.space8
        step: Tokens.label
        text: qsTr("5 mm")
        Accessible.ignored: true
    }
    Rectangle {
        id: line
        objectName: "bar"
        x: Tokens.space8
        y: label.y + label.height
        width: bar.view.barLength
        height: 4
        color: Tokens.ink
    }
}
