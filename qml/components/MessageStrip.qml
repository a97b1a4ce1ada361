import QtQuick

// An error or a notice: `happened` (what happened), `safe` (what is safe) and `advice` (what to
// do), with an optional action (`actionText`, emits acted()). `tone` is "stop", "warn" or "ok". It
// is an alert for a screen reader.
Strip {
    id: strip

    property string tone: "warn"
    required property string happened
    property string safe
    property string advice
    property string actionText

    readonly property bool good: strip.tone === "ok"
    readonly property color toneColor: strip.good ? Tokens.ok
                                                  : strip.tone === "stop" ? Tokens.stop
                                                                          : Tokens.warn

    signal acted

    bar: strip.toneColor
    spacing: Tokens.space4
    Accessible.role: Accessible.AlertMessage
    Accessible.name: (strip.happened + " " + strip.safe + " " + strip.advice).trim()

    Item {
        width: parent.width
        height: Math.max(mark.height, title.height)

        Glyph {
            id: mark
            y: Math.round((Tokens.heading.lineHeight - height) / 2)
            name: strip.good ? "check" : "caution"
            color: strip.toneColor
        }
        StepText {
            id: title
            anchors.left: mark.right
            anchors.leftMargin: 10
            anchors.right: parent.right
            step: Tokens.heading
            color: strip.toneColor
            text: strip.happened
        }
    }
    StepText {
        width: parent.width
        visible: strip.safe !== ""
        step: Tokens.reason
        text: strip.safe
    }
    StepText {
        width: parent.width
        visible: strip.advice !== ""
        step: Tokens.reason
        color: Tokens.inkSoft
        text: strip.advice
    }
    Item {
        width: parent.width
        height: action.implicitHeight - Tokens.space12
        visible: strip.actionText !== ""

        ActionButton {
            id: action
            x: -Tokens.space12
            width: Math.min(implicitWidth, parent.width + Tokens.space12)
            kind: "plain"
            text: strip.actionText
            onActivated: strip.acted()
        }
    }
}
