import QtQuick
import Burrow.Components
import Burrow.Ports

// The lower panel of the scanner: torch, typing, and the way out.
Rectangle {
    id: panel

    required property Scanner scanner
    property bool offersMoult: true

    signal typing
    signal closed
    signal moultWanted

    implicitHeight: column.height
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

        ScanActions {
            width: parent.width
            scanner: panel.scanner
            onTyping: panel.typing()
            onClosed: panel.closed()
        }
        ActionButton {
            width: parent.width
            visible: panel.offersMoult
            kind: "plain"
            glyph: "moult"
            text: qsTr("Photograph a moult")
            onActivated: panel.moultWanted()
        }
        StepText {
            width: parent.width
            horizontalAlignment: Text.AlignHCenter
            step: Tokens.reason
            color: Tokens.inkSoft
            text: panel.scanner.state === Scanner.Running ? qsTr("Hold steady on the tag. It opens by itself.")
                                                          : qsTr("Type the number on the tag.")
        }
    }
}
