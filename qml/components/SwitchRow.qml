import QtQuick

// A strip with a switch: `text`, `sub`, `on`, and the two words on the switch (`wordOn`,
// `wordOff`). It does not turn itself: it emits toggled(on) with the wish, and shows what `on`
// says.
PressArea {
    id: row

    property string sub
    property bool on: false
    required property string wordOn
    required property string wordOff

    signal toggled(bool on)

    implicitWidth: 380
    implicitHeight: Math.max(74, Math.max(words.height, pill.height) + topPadding + bottomPadding)
    leftPadding: Tokens.stripPadding
    rightPadding: Tokens.stripPadding
    topPadding: Tokens.space12
    bottomPadding: Tokens.space12
    corner: Tokens.radiusPaper
    Accessible.role: Accessible.CheckBox
    Accessible.checkable: true
    Accessible.checked: row.on
    Accessible.name: row.text + ", " + (row.on ? row.wordOn : row.wordOff)
    Accessible.description: row.sub
    onActivated: row.toggled(!row.on)

    Item {
        x: row.leftPadding
        y: row.topPadding
        width: row.availableWidth
        height: row.availableHeight

        Column {
            id: words
            anchors.left: parent.left
            anchors.right: pill.left
            anchors.rightMargin: Tokens.space12
            anchors.verticalCenter: parent.verticalCenter

            StepText {
                width: parent.width
                step: Tokens.bodyStrong
                text: row.text
                Accessible.ignored: true
            }
            StepText {
                width: parent.width
                visible: row.sub !== ""
                step: Tokens.reason
                color: Tokens.inkSoft
                text: row.sub
                Accessible.ignored: true
            }
        }
        Rectangle {
            id: pill

            readonly property real words: Math.max(onWord.implicitWidth, offWord.implicitWidth)

            anchors.right: parent.right
            anchors.verticalCenter: parent.verticalCenter
            width: Math.max(72, 44 + Math.ceil(pill.words))
            height: Math.max(40, onWord.implicitHeight + Tokens.space12)
            radius: height / 2
            color: row.on ? Tokens.act : Tokens.raised
            border.width: row.on ? 0 : Tokens.lineControl
            border.color: Tokens.edge

            StepText {
                id: onWord
                anchors.verticalCenter: parent.verticalCenter
                x: Math.round((knob.onX - width) / 2) + 2
                visible: row.on
                step: Tokens.label
                color: Tokens.actInk
                text: row.wordOn
                wrapMode: Text.NoWrap
                Accessible.ignored: true
            }
            StepText {
                id: offWord
                anchors.verticalCenter: parent.verticalCenter
                x: Math.round((pill.width + 6 + knob.width - width) / 2) - 1
                visible: !row.on
                step: Tokens.label
                text: row.wordOff
                wrapMode: Text.NoWrap
                Accessible.ignored: true
            }
            Rectangle {
                id: knob

                readonly property real onX: pill.width - width - 6

                x: row.on ? knob.onX : 6
                anchors.verticalCenter: parent.verticalCenter
                width: 28
                height: 28
                radius: 14
                color: row.on ? Tokens.actInk : "transparent"
                border.width: row.on ? 0 : Tokens.lineControl
                border.color: Tokens.edge
            }
        }
    }
    background: StripGround {
        pressed: row.down
    }
}
