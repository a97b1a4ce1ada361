import QtQuick
import Burrow.Components

// Something to buy: what, what it costs, and why; a button puts it into the stock. Emits bought().
Column {
    id: purchase

    property string heading
    required property string name
    property string value
    property string sub
    property bool marked: false

    signal bought

    spacing: Tokens.space4

    StepText {
        width: parent.width
        visible: purchase.heading !== ""
        topPadding: Tokens.space8
        step: Tokens.reasonStrong
        text: purchase.heading
        Accessible.role: Accessible.Heading
    }
    Strip {
        width: parent.width
        bar: purchase.marked ? Tokens.act : "transparent"
        spacing: Tokens.space4

        StepText {
            width: parent.width
            step: Tokens.heading
            color: Tokens.est
            text: purchase.name
        }
        MeasureText {
            width: parent.width
            text: purchase.value
        }
        StepText {
            width: parent.width
            step: Tokens.reason
            color: Tokens.inkSoft
            text: purchase.sub
        }
        ActionButton {
            width: parent.width
            kind: "secondary"
            glyph: "check"
            text: qsTr("Bought")
            Accessible.name: qsTr("Bought: %1").arg(purchase.name)
            onActivated: purchase.bought()
        }
    }
}
