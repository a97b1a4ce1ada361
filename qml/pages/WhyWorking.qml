pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components

// What an answer was worked out from: its window, the amount, and what was weighed, line by line.
Strip {
    id: strip

    required property string amount
    required property string span
    required property var working

    spacing: Tokens.space4

    StepText {
        width: parent.width
        visible: text !== ""
        step: Tokens.reasonStrong
        text: strip.span
    }
    StepText {
        width: parent.width
        visible: text !== ""
        step: Tokens.reasonStrong
        text: strip.amount
    }
    Repeater {
        model: strip.working

        StepText {
            required property string modelData

            width: parent?.width ?? 0
            step: Tokens.reason
            text: modelData
        }
    }
    StepText {
        width: parent.width
        visible: strip.working.length === 0 && strip.span === "" && strip.amount === ""
        step: Tokens.reason
        color: Tokens.inkSoft
        text: qsTr("Nothing had to be weighed for this.")
    }
}
