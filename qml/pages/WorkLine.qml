import QtQuick
import Burrow.Components
import Burrow.ViewModels

// How far something is: in words, and as a rule that fills.
Column {
    id: line

    required property FileWork work

    visible: line.work.active
    spacing: Tokens.space8
    Accessible.role: Accessible.ProgressBar
    Accessible.name: line.work.text

    StepText {
        width: parent.width
        step: Tokens.bodyStrong
        text: line.work.text
        Accessible.ignored: true
    }
    Rectangle {
        width: parent.width
        height: 6
        radius: 3
        color: Tokens.raised

        Rectangle {
            width: parent.width * Math.max(0, line.work.share)
            height: parent.height
            radius: parent.radius
            color: Tokens.act
        }
    }
}
