import QtQuick

// A row that asks for something: punch, tag, rule, binomial, small moult line, verb and reason.
// `punch` is a kind of Punch; `held` fades the strip, `look` turns it to the stop tone; set the
// small line's data through `line` (`line.marks` and so on; it shows when it has a `nowDay`). Emits
// activated(). With `rightWord` or `leftWord` a swipe that way emits swipedRight() or swipedLeft()
// as a shortcut; it is never the only way. `sentence` is what a screen reader says.
Item {
    id: strip

    property string punch: "feed"
    required property string tag
    property string binomial
    property string verb
    property string reason
    property bool held: false
    property bool look: false
    property string rightWord
    property string leftWord
    property alias line: content.line
    property string sentence: strip.tag + ", " + strip.binomial + ". " + strip.verb + " "
                              + strip.reason

    signal activated
    signal swipedRight
    signal swipedLeft

    implicitWidth: 380
    implicitHeight: row.implicitHeight

    // Made when a finger first draws the row aside: a list holds many rows, and most are never drawn.
    Loader {
        id: aside
        anchors.fill: parent
        visible: swipe.active
        source: swipe.drawn ? Qt.resolvedUrl("StripRowAside.qml") : ""

        Binding {
            target: aside.item
            property: "reach"
            value: swipe.reach
        }
        Binding {
            target: aside.item
            property: "word"
            value: swipe.reach > 0 ? strip.rightWord : strip.leftWord
        }
        Binding {
            target: aside.item
            property: "far"
            value: swipe.far
        }
    }
    DragHandler {
        id: swipe

        readonly property real reach: Math.max(strip.leftWord === "" ? 0 : -160,
                                               Math.min(strip.rightWord === "" ? 0 : 160,
                                                        swipe.activeTranslation.x))
        readonly property bool far: Math.abs(swipe.reach) >= 96
        property real last: 0
        property bool drawn: false

        enabled: strip.rightWord !== "" || strip.leftWord !== ""
        target: null
        yAxis.enabled: false
        onReachChanged: if (swipe.active)
            swipe.last = swipe.reach
        onActiveChanged: {
            if (swipe.active) {
                swipe.drawn = true;
                return;
            }
            if (swipe.last >= 96)
                strip.swipedRight();
            else if (swipe.last <= -96)
                strip.swipedLeft();
            swipe.last = 0;
        }
    }
    PressArea {
        id: row
        objectName: "press"
        x: swipe.active ? swipe.reach : 0
        width: parent.width
        height: parent.height
        implicitHeight: content.implicitHeight
        corner: Tokens.radiusPaper
        text: strip.tag
        Accessible.name: strip.sentence
        onActivated: strip.activated()

        StripRowContent {
            id: content
            anchors.fill: parent
            punch: strip.punch
            tag: strip.tag
            binomial: strip.binomial
            verb: strip.verb
            reason: strip.reason
            held: strip.held
            look: strip.look
        }
        background: StripGround {
            held: strip.held
            pressed: row.down
        }
    }
}
