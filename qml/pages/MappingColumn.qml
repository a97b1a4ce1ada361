import QtQuick
import Burrow.Components

// One column of a spreadsheet: what it stands for, what becomes of its cells, and how its dates and
// lengths are read. Emits targetAsked(), orderAsked() and unitAsked().
Strip {
    id: column

    required property var modelData

    signal targetAsked
    signal orderAsked
    signal unitAsked

    bar: column.modelData.trouble !== "" ? Tokens.warn : "transparent"
    padding: 0

    PickRow {
        x: -Tokens.stripPadding
        width: parent.width + 2 * Tokens.stripPadding
        name: column.modelData.name
        value: column.modelData.target
        sub: column.modelData.samples
        bar: column.bar
        onActivated: column.targetAsked()
    }
    StepText {
        width: parent.width
        visible: text !== ""
        topPadding: Tokens.space8
        bottomPadding: Tokens.space8
        step: Tokens.reasonStrong
        color: Tokens.warn
        text: column.modelData.trouble
    }
    ActionButton {
        x: -Tokens.space12
        visible: column.modelData.dates !== ""
        width: Math.min(implicitWidth, parent.width + Tokens.space12)
        kind: "plain"
        text: qsTr("Dates: %1").arg(column.modelData.dates)
        Accessible.name: qsTr("%1, dates: %2").arg(column.modelData.name).arg(column.modelData.dates)
        onActivated: column.orderAsked()
    }
    ActionButton {
        x: -Tokens.space12
        visible: column.modelData.unit !== ""
        width: Math.min(implicitWidth, parent.width + Tokens.space12)
        kind: "plain"
        text: qsTr("Lengths in %1").arg(column.modelData.unit)
        Accessible.name: qsTr("%1, lengths in %2").arg(column.modelData.name).arg(column.modelData.unit)
        onActivated: column.unitAsked()
    }
}
