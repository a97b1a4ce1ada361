pragma ComponentBehavior: Bound
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
    Repeater {
        model: choice.model.conflicts

        MessageStrip {
            required property string modelData

            width: choice.width
            happened: modelData
        }
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
        Hairline {
            width: parent.width
        }
        StepText {
            width: parent.width
            step: Tokens.heading
            text: choice.model.finding
        }
        StepText {
            width: parent.width
            step: Tokens.reason
            color: Tokens.inkSoft
            text: choice.model.preview
        }
        BalanceLine {
            width: parent.width
            before: choice.model.before
            after: choice.model.after
            low: qsTr("male")
            middle: qsTr("even")
            high: qsTr("female")
            description: choice.model.preview
        }
        StepText {
            width: parent.width
            step: Tokens.reason
            color: Tokens.inkSoft
            text: qsTr("What is seen barely or partly is kept as evidence and leaves the record of its sex as it is.")
        }
    }
}
