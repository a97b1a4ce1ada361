import QtQuick
import Burrow.Components

// A plot of one value on a strip: its name at the left, its unit at the right, and the plot in words under
// it.
Strip {
    id: strip

    required property string name
    required property string unit
    required property string words
    property string note
    property var points: []
    property var labels: []
    property bool hasWanted: false
    property real wantedLow: 0
    property real wantedHigh: 0

    spacing: Tokens.space8

    Item {
        width: parent.width
        height: Math.max(title.height, measure.height)

        StepText {
            id: title
            anchors.left: parent.left
            anchors.right: measure.left
            anchors.rightMargin: Tokens.space8
            step: Tokens.reasonStrong
            text: strip.name
            Accessible.role: Accessible.Heading
        }
        StepText {
            id: measure
            anchors.right: parent.right
            step: Tokens.tick
            color: Tokens.inkSoft
            text: strip.unit
        }
    }
    BandPlot {
        width: parent.width
        description: strip.words
        points: strip.points
        labels: strip.labels
        hasWanted: strip.hasWanted
        wantedLow: strip.wantedLow
        wantedHigh: strip.wantedHigh
    }
    StepText {
        width: parent.width
        step: Tokens.reason
        color: Tokens.inkSoft
        text: strip.words
        Accessible.ignored: true
    }
    StepText {
        width: parent.width
        visible: strip.note !== ""
        step: Tokens.reason
        color: Tokens.inkSoft
        text: strip.note
    }
}
