import QtQuick

// The main action at the shelf: a hole that fills, a verb (`text`) and what happens next (`sub`).
// `held` draws the holding-back action: an outline with hatch, as large as any other. Emits
// activated(), and heldDown() when it is kept pressed. `enabled: false` is off.
PressArea {
    id: slab

    property string sub
    property bool held: false

    signal heldDown

    readonly property bool filled: slab.enabled && !slab.held
    readonly property color textColor: slab.filled ? Tokens.actInk
                                                   : slab.enabled ? Tokens.ink : Tokens.inkSoft

    implicitHeight: Math.max(Tokens.slabHeight, words.height + topPadding + bottomPadding)
    leftPadding: slab.held ? 112 : 98
    rightPadding: Tokens.space20
    topPadding: Tokens.space16
    bottomPadding: Tokens.space16
    corner: Tokens.radiusSlab
    Accessible.name: slab.sub === "" ? slab.text : slab.text + ", " + slab.sub
    onPressAndHold: slab.heldDown()

    HatchFill {
        anchors {
            left: parent.left
            top: parent.top
            bottom: parent.bottom
            margins: Tokens.lineFocus
        }
        width: 93
        visible: slab.held
        corner: Tokens.radiusSlab - Tokens.lineFocus
        color: slab.down ? Tokens.ink : Tokens.hatch
    }
    Rectangle {
        id: hole
        anchors.verticalCenter: parent.verticalCenter
        x: Tokens.space24
        width: 54
        height: 54
        radius: 27
        visible: !slab.held
        color: slab.enabled ? Tokens.ground : "transparent"
        border.width: slab.enabled ? 0 : Tokens.lineControl
        border.color: Tokens.edge

        Rectangle {
            anchors.centerIn: parent
            width: 42
            height: 42
            radius: 21
            color: Tokens.act
            scale: slab.down || Tokens.reducedMotion ? 1 : 0
            opacity: slab.down ? 1 : 0
            Behavior on scale {
                NumberAnimation {
                    duration: Tokens.punchTime
                    easing.type: Easing.OutBack
                    easing.overshoot: 1.2
                }
            }
            Behavior on opacity {
                NumberAnimation {
                    duration: Tokens.punchTime
                }
            }
        }
    }
    Item {
        x: slab.leftPadding
        y: slab.topPadding
        width: slab.availableWidth
        height: slab.availableHeight

        Column {
            id: words
            anchors.verticalCenter: parent.verticalCenter
            width: parent.width
            spacing: Tokens.space4

            StepText {
                width: parent.width
                step: Tokens.slab
                text: slab.text
                color: slab.textColor
                Accessible.ignored: true
            }
            StepText {
                width: parent.width
                step: Tokens.reason
                text: slab.sub
                visible: slab.sub !== ""
                color: slab.filled || !slab.enabled ? slab.textColor : Tokens.inkSoft
                Accessible.ignored: true
            }
        }
    }
    background: Rectangle {
        radius: Tokens.radiusSlab
        color: slab.filled ? Tokens.act : slab.down ? Tokens.raised : "transparent"
        border.width: slab.filled ? 0 : slab.held ? Tokens.lineFocus : Tokens.lineControl
        border.color: slab.held ? Tokens.ink : Tokens.edge
    }
}
