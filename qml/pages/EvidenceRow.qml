import QtQuick
import Burrow.Components

// One line of the ledger: when, what was seen, what it counts for, and how far it moved the chance.
Column {
    id: row

    required property var line
    property bool last: false

    topPadding: Tokens.space12
    spacing: Tokens.space4

    StepText {
        width: parent.width
        step: Tokens.tick
        color: Tokens.inkSoft
        text: row.line.head
    }
    StepText {
        width: parent.width
        step: Tokens.bodyStrong
        color: row.line.counts ? Tokens.ink : Tokens.inkSoft
        text: row.line.text
    }
    StepText {
        width: parent.width
        step: Tokens.reason
        color: row.line.corrected ? Tokens.warn : Tokens.inkSoft
        text: row.line.counted
    }
    BalanceLine {
        width: parent.width
        visible: row.line.counts
        before: row.line.before
        after: row.line.after
        low: qsTr("male")
        middle: qsTr("even")
        high: qsTr("female")
        description: row.line.counted
    }
    StepText {
        width: parent.width
        visible: row.line.source !== ""
        step: Tokens.label
        weight: Font.Normal
        color: Tokens.inkSoft
        text: row.line.source
    }
    Item {
        width: 1
        height: Tokens.space8
    }
    Hairline {
        width: parent.width
        visible: !row.last
    }
}
