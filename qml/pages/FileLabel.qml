import QtQuick
import Burrow.Components
import Burrow.ViewModels

// The label of a file that is being made: how many animals, and once it stands, what it holds.
Strip {
    id: label

    required property MakeFileModel file

    readonly property bool made: label.file.step === MakeFileModel.Made

    spacing: Tokens.space8

    Flow {
        width: parent.width
        spacing: Tokens.space12

        TagText {
            size: "label"
            text: label.file.animals
        }
        StepText {
            topPadding: step.above + Tokens.space20
            step: Tokens.bodyStrong
            text: qsTr("animals")
        }
        StepText {
            topPadding: step.above + Tokens.space20
            visible: label.made
            step: Tokens.measure
            text: label.file.madeSize
        }
    }
    Hairline {
        width: parent.width
        visible: label.made || label.file.work.active
    }
    WorkLine {
        width: parent.width
        work: label.file.work
    }
    StepText {
        width: parent.width
        visible: label.made
        step: Tokens.bodyStrong
        text: label.file.madeTitle
    }
    StepText {
        width: parent.width
        visible: label.made
        step: Tokens.reason
        color: Tokens.inkSoft
        text: label.file.madeText
    }
    CheckLine {
        width: parent.width
        visible: label.made
        text: qsTr("Read back and complete")
    }
}
