pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components

// A verdict in words, in five stops of certainty, and as a place on the line from male to female.
Strip {
    id: strip

    required property string verdict
    required property string chance
    required property real before
    required property real after
    required property var stops
    required property int stop

    spacing: Tokens.space8

    StepText {
        width: parent.width
        step: Tokens.slab
        text: strip.verdict
        Accessible.role: Accessible.Heading
    }
    StepText {
        width: parent.width
        step: Tokens.reason
        color: Tokens.inkSoft
        text: strip.chance
    }
    BalanceLine {
        width: parent.width
        before: strip.before
        after: strip.after
        low: qsTr("male")
        middle: qsTr("even")
        high: qsTr("female")
        description: strip.chance
    }
    Row {
        id: row

        readonly property real share: (width - Tokens.space4 * 4) / 5

        width: parent.width
        spacing: Tokens.space4
        Accessible.role: Accessible.StaticText
        Accessible.name: strip.stop < 0 ? qsTr("Not certain at all") : strip.stops[strip.stop]

        Repeater {
            model: strip.stops

            Rectangle {
                required property int index

                width: row.share
                height: 8
                radius: 4
                color: index <= strip.stop ? Tokens.ink : "transparent"
                border.width: index <= strip.stop ? 0 : Tokens.lineRule
                border.color: Tokens.edge
            }
        }
    }
    StepText {
        width: parent.width
        step: Tokens.label
        text: strip.stop < 0 ? qsTr("Not certain at all") : strip.stops[strip.stop]
        Accessible.ignored: true
    }
}
