pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components

// An animal and its home, or an empty home: `lines` of facts, `estimates` of what is only expected,
// `cautions` to mind. With a `verb` there is something to write down: emits made(). Emits opened() for its
// page.
Strip {
    id: strip

    property string tag
    property string binomial
    required property string title
    property var lines: []
    property var estimates: []
    property var cautions: []
    property string verb
    property bool urgent: false
    required property string openText

    signal made
    signal opened

    bar: strip.urgent ? Tokens.warn : "transparent"
    spacing: Tokens.space4

    TagText {
        width: parent.width
        visible: strip.tag !== ""
        text: strip.tag
    }
    Latin {
        width: parent.width
        visible: strip.binomial !== ""
        text: strip.binomial
    }
    StepText {
        width: parent.width
        step: Tokens.bodyStrong
        text: strip.title
    }
    Repeater {
        model: strip.lines

        StepText {
            required property string modelData

            width: parent?.width ?? 0
            step: Tokens.reason
            color: Tokens.inkSoft
            text: modelData
        }
    }
    Repeater {
        model: strip.estimates

        StepText {
            required property string modelData

            width: parent?.width ?? 0
            step: Tokens.reason
            color: Tokens.est
            text: modelData
        }
    }
    Repeater {
        model: strip.cautions

        StepText {
            required property string modelData

            width: parent?.width ?? 0
            step: Tokens.reason
            text: modelData
        }
    }
    ActionButton {
        width: parent.width
        visible: strip.verb !== ""
        kind: "secondary"
        glyph: "check"
        text: strip.verb
        Accessible.name: qsTr("%1. %2").arg(strip.verb).arg(strip.title)
        onActivated: strip.made()
    }
    ActionButton {
        x: -Tokens.space12
        kind: "plain"
        text: strip.openText
        onActivated: strip.opened()
    }
}
