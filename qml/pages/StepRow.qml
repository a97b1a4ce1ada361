import QtQuick
import Burrow.Components

// A value that goes up and down by steps: `name` over `value`, with minus and plus. With `tappable` the
// words open more. Emits less(), more() and opened().
Item {
    id: row

    required property string name
    required property string value
    property string lessText: qsTr("%1: one less").arg(row.name)
    property string moreText: qsTr("%1: one more").arg(row.name)
    property bool canLess: true
    property bool canMore: true
    property bool tappable: false

    signal less
    signal more
    signal opened

    implicitHeight: Math.max(Tokens.shelfTarget, words.height) + 2 * Tokens.space8

    PressArea {
        anchors.fill: words
        corner: Tokens.radiusPaper
        visible: row.tappable
        text: row.name + ", " + row.value
        background: null
        onActivated: row.opened()
    }
    Column {
        id: words
        anchors.left: parent.left
        anchors.right: less.left
        anchors.rightMargin: Tokens.space12
        anchors.verticalCenter: parent.verticalCenter
        topPadding: Tokens.space4
        bottomPadding: Tokens.space4

        StepText {
            width: parent.width
            step: Tokens.label
            color: Tokens.inkSoft
            text: row.name
            Accessible.ignored: row.tappable
        }
        StepText {
            width: parent.width
            step: Tokens.bodyStrong
            text: row.value
            Accessible.ignored: row.tappable
        }
    }
    SquareButton {
        id: less
        anchors.right: more.left
        anchors.rightMargin: Tokens.betweenTargets
        anchors.verticalCenter: parent.verticalCenter
        glyph: "minus"
        text: row.lessText
        enabled: row.canLess
        onActivated: row.less()
    }
    SquareButton {
        id: more
        anchors.right: parent.right
        anchors.verticalCenter: parent.verticalCenter
        glyph: "plus"
        text: row.moreText
        enabled: row.canMore
        onActivated: row.more()
    }
}
