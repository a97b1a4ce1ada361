import QtQuick
import Burrow.Components
import Burrow.ViewModels

// The life of an animal, drawn: its moult line, and its growth in steps. Emits entryWanted(entry) for a
// mark that is tapped.
Column {
    id: life

    required property AnimalModel animal

    readonly property bool blank: life.animal.marks.length === 0 && life.animal.feedings.length === 0

    signal entryWanted(string entry)

    spacing: Tokens.betweenStrips

    Strip {
        width: parent.width
        spacing: Tokens.space8

        StripTitle {
            width: parent.width
            name: qsTr("Moult line")
            note: life.animal.marks.length > 0 ? qsTr("Tap a tick for its entry") : ""
        }
        MoultLine {
            x: -4
            width: parent.width + 8
            visible: !life.blank
            size: MoultLine.OnPage
            tappable: life.animal.marks.length > 0
            marks: life.animal.marks
            feedings: life.animal.feedings
            labels: life.animal.lineLabels
            nowDay: life.animal.nowDay
            nowLabel: qsTr("now")
            description: life.animal.lineText
            onMarkTapped: index => life.entryWanted(life.animal.entryOfMark(index))
        }
        StepText {
            width: parent.width
            visible: life.animal.marks.length === 0
            step: Tokens.reason
            color: Tokens.inkSoft
            text: life.blank ? qsTr("One moult is enough to start this line.") : qsTr("No moult is logged yet.")
        }
    }
    Strip {
        width: parent.width
        visible: life.animal.growthPoints.length > 0
        spacing: Tokens.space8

        StripTitle {
            width: parent.width
            name: qsTr("Growth")
            note: life.animal.growthUnit
        }
        StepPlot {
            width: parent.width
            points: life.animal.growthPoints
            labels: life.animal.growthLabels
            nowDay: life.animal.nowDay
            description: life.animal.growthText
        }
    }
}
