import QtQuick
import Burrow.Components

// A count with minus and plus. Emits chosen(value).
Item {
    id: row

    required property string name
    required property int value
    property int least: 1
    property int most: 9999

    signal chosen(int value)

    implicitHeight: Math.max(Tokens.shelfTarget, words.height) + 2 * Tokens.space8

    Column {
        id: words
        anchors.left: parent.left
        anchors.right: less.left
        anchors.rightMargin: Tokens.space12
        anchors.verticalCenter: parent.verticalCenter

        StepText {
            width: parent.width
            step: Tokens.label
            color: Tokens.inkSoft
            text: row.name
        }
        MeasureText {
            width: parent.width
            text: row.value
        }
    }
    SquareButton {
        id: less
        anchors.right: more.left
        anchors.rightMargin: Tokens.betweenTargets
        anchors.verticalCenter: parent.verticalCenter
        glyph: "minus"
        text: qsTr("%1: one less").arg(row.name)
        enabled: row.value > row.least
        onActivated: row.chosen(row.value - 1)
    }
    SquareButton {
        id: more
        anchors.right: parent.right
        anchors.verticalCenter: parent.verticalCenter
        glyph: "plus"
        text: qsTr("%1: one more").arg(row.name)
        enabled: row.value < row.most
        onActivated: row.chosen(row.value + 1)
    }
}
