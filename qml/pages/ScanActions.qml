import QtQuick
import QtQuick.Layouts
import Burrow.Components
import Burrow.Ports

// Torch where there is one, typing, closing; one below the other at large text.
GridLayout {
    id: actions

    required property Scanner scanner

    signal typing
    signal closed

    columns: Tokens.roundCompact ? 1 : 3
    columnSpacing: Tokens.betweenTargets
    rowSpacing: Tokens.betweenTargets

    ActionButton {
        Layout.fillWidth: true
        visible: actions.scanner.torchAvailable
        kind: actions.scanner.torchOn ? "primary" : "secondary"
        glyph: "torch"
        text: actions.scanner.torchOn ? qsTr("Torch low") : qsTr("Torch")
        onActivated: actions.scanner.torchOn = !actions.scanner.torchOn
    }
    ActionButton {
        Layout.fillWidth: true
        kind: "secondary"
        glyph: "keyboard"
        text: qsTr("Type tag")
        onActivated: actions.typing()
    }
    ActionButton {
        Layout.fillWidth: true
        kind: "secondary"
        glyph: "cross"
        text: qsTr("Close")
        onActivated: actions.closed()
    }
}
