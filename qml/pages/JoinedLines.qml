import QtQuick
import Burrow.Components

// Two books becoming one: the line of here and the line of the file run together into that of now, each
// with its number of animals.
Item {
    id: lines

    property int before
    property int inFile
    property int now

    readonly property real joint: Math.round(lines.width * 0.52)
    readonly property real upper: hereLabel.height + Tokens.space24
    readonly property real lower: lines.upper + Tokens.space48 + Tokens.space8
    readonly property real middle: (lines.upper + lines.lower) / 2

    implicitHeight: fileLabel.y + fileLabel.height
    Accessible.role: Accessible.StaticText
    Accessible.name: qsTr("%1 animals here, %2 in the file, %3 now").arg(lines.before).arg(
                         lines.inFile).arg(lines.now)

    Count {
        id: hereLabel
        name: qsTr("here")
        count: lines.before
    }
    Count {
        id: fileLabel
        y: lines.lower + Tokens.space12
        name: qsTr("in the file")
        count: lines.inFile
    }
    Count {
        id: nowLabel
        anchors.right: parent.right
        y: lines.middle + Tokens.space16
        name: qsTr("now")
        count: lines.now
    }
    Run {
        y: lines.upper
        width: lines.joint - Tokens.space48
    }
    Run {
        y: lines.lower
        width: lines.joint - Tokens.space48
    }
    Run {
        x: lines.joint
        y: lines.middle
        width: lines.width - lines.joint - Tokens.space12
    }
    Slope {
        y: lines.upper
        end: lines.joint
        fall: lines.middle - lines.upper
    }
    Slope {
        y: lines.lower
        end: lines.joint
        fall: lines.middle - lines.lower
    }
    Rectangle {
        x: lines.width - width
        y: lines.middle - height / 2
        width: 14
        height: 14
        radius: 7
        color: "transparent"
        border.width: Tokens.lineData
        border.color: Tokens.ink
    }

    component Run: Rectangle {
        height: Tokens.lineData
        color: Tokens.ink
        transform: Translate {
            y: -Tokens.lineData / 2
        }
    }
    component Slope: Rectangle {
        id: slope

        property real end
        property real fall

        readonly property real along: Tokens.space48

        x: slope.end - slope.along
        width: Math.sqrt(slope.along * slope.along + slope.fall * slope.fall)
        height: Tokens.lineData
        color: Tokens.ink
        antialiasing: true
        transformOrigin: Item.Left
        rotation: Math.atan2(slope.fall, slope.along) * 180 / Math.PI
        transform: Translate {
            y: -Tokens.lineData / 2
        }
    }
    component Count: Row {
        id: label

        property string name
        property int count

        spacing: Tokens.space12

        StepText {
            anchors.baseline: number.baseline
            step: Tokens.reason
            color: Tokens.inkSoft
            text: label.name
            Accessible.ignored: true
        }
        StepText {
            id: number
            step: Tokens.heading
            text: label.count
            Accessible.ignored: true
        }
    }
}
