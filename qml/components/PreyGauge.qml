pragma ComponentBehavior: Bound
import QtQuick

// How much prey, against the animal's size: `amount` ("1 cricket, 8 mm"), a carapace bar and a prey
// bar to one scale (`carapace`, `prey` in mm, with `carapaceText`, `preyText`), minus and plus.
// `note` says that the amount was changed by hand. The bars hide when a size is unknown (0) and at
// large text, or when `compact` is set. `lessText`, `moreText` name the buttons for a screen
// reader. Emits less() and more(). With `openText` the amount answers a tap with opened(): other
// prey, another count.
Item {
    id: gauge

    property string amount
    property string note
    property real carapace: 0
    property real prey: 0
    property string carapaceText
    property string preyText
    required property string lessText
    required property string moreText
    property string openText
    property bool canLess: true
    property bool canMore: true

    property bool compact: Tokens.roundCompact

    readonly property bool bars: gauge.carapace > 0 && gauge.prey > 0 && !gauge.compact
    readonly property real most: Math.max(gauge.carapace, gauge.prey)
    // The longer bar takes what its words leave, within reason.
    readonly property real wordRoom: Tokens.space8 + Math.max(own.textWidth, other.textWidth)
    readonly property real longest: Math.max(48, Math.min(119, words.width - gauge.wordRoom))
    readonly property real perMm: gauge.longest / Math.max(1, gauge.most)

    signal less
    signal more
    signal opened

    implicitWidth: 380
    implicitHeight: Math.max(words.height, buttons.height) + 2 * Tokens.rowPadding
    LayoutMirroring.enabled: Tokens.leftHanded
    LayoutMirroring.childrenInherit: true

    StripGround {
        anchors.fill: parent
    }
    PressArea {
        anchors.left: parent.left
        anchors.right: buttons.left
        height: parent.height
        visible: gauge.openText !== ""
        corner: Tokens.radiusPaper
        text: gauge.openText
        Accessible.name: gauge.amount + ". " + gauge.openText
        background: null
        onActivated: gauge.opened()
    }
    Column {
        id: words
        anchors.left: parent.left
        anchors.leftMargin: Tokens.stripPadding
        anchors.right: buttons.left
        anchors.rightMargin: Tokens.space12
        anchors.verticalCenter: parent.verticalCenter
        spacing: 2

        StepText {
            width: parent.width
            step: Tokens.heading
            text: gauge.amount
        }
        StepText {
            width: parent.width
            visible: gauge.note !== ""
            step: Tokens.label
            color: Tokens.inkSoft
            text: gauge.note
        }
        PreyBar {
            id: own
            width: parent.width
            visible: gauge.bars
            length: gauge.carapace * gauge.perMm
            text: gauge.carapaceText
            textColor: Tokens.inkSoft
            outlined: true
        }
        PreyBar {
            id: other
            width: parent.width
            visible: gauge.bars
            length: gauge.prey * gauge.perMm
            text: gauge.preyText
        }
        Item {
            width: parent.width
            height: Tokens.space8
            visible: gauge.bars

            Repeater {
                model: gauge.bars ? Math.min(60, Math.floor(gauge.most) + 1) : 0

                Hairline {
                    required property int index

                    x: Math.round(index * gauge.perMm)
                    width: Tokens.lineHairline
                    height: index % 5 === 0 ? 7 : 4
                    color: Tokens.edge
                }
            }
        }
    }
    Row {
        id: buttons
        anchors.right: parent.right
        anchors.rightMargin: Tokens.rowPadding
        anchors.verticalCenter: parent.verticalCenter
        spacing: Tokens.betweenTargets

        SquareButton {
            glyph: "minus"
            text: gauge.lessText
            enabled: gauge.canLess
            onActivated: gauge.less()
        }
        SquareButton {
            glyph: "plus"
            text: gauge.moreText
            enabled: gauge.canMore
            onActivated: gauge.more()
        }
    }
}
