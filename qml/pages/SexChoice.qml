import QtQuick
import Burrow.Components
import Burrow.ViewModels

// What the keeper sees in a moult, and how clearly.
Column {
    id: choice

    required property SexModel model

    spacing: Tokens.betweenStrips

    MessageStrip {
        width: parent.width
        visible: choice.model.verdict !== ""
        happened: choice.model.verdict
    }
    Strip {
        width: parent.width
        spacing: Tokens.space12

        Heading {
            width: parent.width
            level: 2
            text: qsTr("Inside the abdomen skin")
        }
        ChoiceTiles {
            width: parent.width
            name: qsTr("What it shows")
            options: choice.model.choices
            current: choice.model.choice
            onChosen: index => choice.model.choice = index
        }
        Heading {
            width: parent.width
            level: 2
            text: qsTr("How clearly?")
        }
        CertaintyStops {
            width: parent.width
            name: qsTr("How clearly it is seen")
            words: choice.model.clarities
            current: choice.model.clarity
            onChosen: index => choice.model.clarity = index
        }
        StepText {
            width: parent.width
            step: Tokens.reason
            color: Tokens.inkSoft
            text: qsTr("Kept with your answer. One moult alone seldom settles it.")
        }
    }
}
