import QtQuick
import Burrow.Components

// What was just logged, and the way back: `tag` and `message`, `undoText`, and a rule that drains
// in `duration` ms (0: until told otherwise). A change of `serial` starts it anew and is announced;
// an empty `message` keeps the space free. Paused under a finger. With reduced motion `countdown`
// ("%1 seconds") counts in words. Emits undone() and expired().
Item {
    id: bar

    property string tag
    property string message
    required property string undoText
    property string countdown: "%1"
    property int duration: Tokens.undoHold
    property int serial: 0
    readonly property bool live: bar.message !== ""
    readonly property bool stacked: Tokens.roundCompact
    readonly property real around: bar.stacked ? undo.implicitHeight + Tokens.space8
                                               : Tokens.space24
    property real remaining: 1

    signal undone
    signal expired

    function restart() {
        bar.remaining = 1;
        drain.stop();
        if (bar.live && bar.duration > 0)
            drain.start();
        if (bar.live)
            announcer.say(bar.tag + " " + bar.message + ". " + bar.undoText);
    }

    implicitWidth: 380
    implicitHeight: Math.max(Tokens.buttonHeight, words.height + bar.around)
    LayoutMirroring.enabled: Tokens.leftHanded
    LayoutMirroring.childrenInherit: true
    onSerialChanged: starter.restart()
    onLiveChanged: starter.restart()

    // Puts the start off until all bindings have settled, so that a new serial and a new message
    // together start and speak once.
    Timer {
        id: starter
        interval: 0
        onTriggered: bar.restart()
    }
    NumberAnimation {
        id: drain
        target: bar
        property: "remaining"
        from: 1
        to: 0
        duration: bar.duration
        paused: drain.running && (undo.down || touch.pressed)
        onFinished: bar.expired()
    }
    Announcer {
        id: announcer
        Accessible.role: Accessible.AlertMessage
        Accessible.name: announcer.text
    }
    Rectangle {
        anchors.fill: parent
        radius: Tokens.radiusControl
        color: Tokens.raised
        border.width: Tokens.lineControl
        border.color: Tokens.edge
        opacity: bar.live ? 1 : 0
        visible: bar.live || opacity > 0
        Behavior on opacity {
            NumberAnimation {
                duration: Tokens.undoInTime
                easing.type: Easing.OutCubic
            }
        }

        MouseArea {
            id: touch
            anchors.fill: parent
        }
        Rectangle {
            id: disc
            anchors {
                left: parent.left
                leftMargin: Tokens.stripPadding
                verticalCenter: words.verticalCenter
            }
            width: 15
            height: 15
            radius: 7.5
            color: Tokens.ok
            scale: bar.live || Tokens.reducedMotion ? 1 : 0
            Behavior on scale {
                NumberAnimation {
                    duration: Tokens.punchTime
                    easing.type: Easing.OutBack
                    easing.overshoot: 1.2
                }
            }
        }
        Column {
            id: words
            anchors {
                left: disc.right
                leftMargin: Tokens.space12
                right: bar.stacked ? parent.right : undo.left
                rightMargin: Tokens.space8
            }
            y: bar.stacked ? Tokens.space8 : Math.round((parent.height - height) / 2)

            ReasonText {
                width: parent.width
                verb: bar.tag
                verbFont: Qt.font({
                    family: Tokens.code,
                    pixelSize: Tokens.reason.pixels,
                    weight: Font.Bold
                })
                reason: bar.message
                reasonColor: Tokens.ink
            }
            StepText {
                objectName: "countdown"
                width: parent.width
                visible: Tokens.reducedMotion && bar.live && bar.duration > 0
                step: Tokens.label
                color: Tokens.inkSoft
                text: bar.countdown.arg(Math.ceil(bar.remaining * bar.duration / 1000))
            }
        }
        ActionButton {
            id: undo
            objectName: "undo"
            anchors {
                right: bar.stacked ? undefined : parent.right
                rightMargin: Tokens.space4
                left: bar.stacked ? words.left : undefined
                leftMargin: -Tokens.space12
                verticalCenter: bar.stacked ? undefined : parent.verticalCenter
                bottom: bar.stacked ? parent.bottom : undefined
                bottomMargin: Tokens.space4
            }
            kind: "plain"
            glyph: "undo"
            text: bar.undoText
            implicitHeight: Tokens.shelfTarget - Tokens.space4
            onActivated: {
                starter.stop();
                drain.stop();
                bar.undone();
            }
        }
        Rectangle {
            anchors.bottom: parent.bottom
            anchors.bottomMargin: Tokens.lineControl + 1
            x: Tokens.radiusControl
            width: (parent.width - 2 * Tokens.radiusControl) * bar.remaining
            height: 3
            radius: 1.5
            color: Tokens.act
            visible: bar.duration > 0 && !Tokens.reducedMotion
        }
    }
}
