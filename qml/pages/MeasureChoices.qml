pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// What is measured, in which photo, how high it stands above the mat, and a length that is typed instead.
Column {
    id: choices

    required property MeasureModel model

    spacing: Tokens.betweenStrips

    Choice {
        visible: choices.model.photos.length > 1
        name: qsTr("In which photo")
        options: choices.model.photos
        current: choices.model.photo
        onChosen: index => choices.model.photo = index
    }
    Choice {
        name: qsTr("What is measured")
        options: choices.model.kinds
        current: choices.model.kind
        onChosen: index => choices.model.kind = index
    }
    Choice {
        visible: choices.model.ofLeg
        name: qsTr("Of which leg")
        options: choices.model.legs
        current: choices.model.leg
        onChosen: index => choices.model.leg = index
    }
    Choice {
        visible: choices.model.ofLeg
        name: qsTr("Which segment")
        options: choices.model.segments
        current: choices.model.segment
        onChosen: index => choices.model.segment = index
    }
    Choice {
        visible: choices.model.canMeasure
        name: qsTr("How high it stands above the mat")
        note: qsTr("What is nearer to the camera looks larger. Say how far both ends stand above the paper, about.")
        options: choices.model.heights
        current: choices.model.height
        onChosen: index => choices.model.height = index
    }
    Strip {
        width: parent.width
        spacing: Tokens.space8

        TextLine {
            width: parent.width
            code: true
            label: qsTr("Or measured with a ruler, mm")
            hint: qsTr("What is typed here is saved instead of the length in the photo.")
            error: choices.model.typedError
            clearText: qsTr("Empty the length")
            text: choices.model.typed
            field.inputMethodHints: Qt.ImhFormattedNumbersOnly
            field.maximumLength: 12
            onEdited: choices.model.typed = text
        }
    }

    component Choice: Strip {
        id: choice

        required property string name
        property string note
        required property var options
        required property int current

        signal chosen(int index)

        width: choices.width
        spacing: Tokens.space8

        StripTitle {
            width: parent.width
            name: choice.name
        }
        StepText {
            width: parent.width
            visible: choice.note !== ""
            step: Tokens.reason
            color: Tokens.inkSoft
            text: choice.note
        }
        ChoiceTiles {
            width: parent.width
            name: choice.name
            options: choice.options
            current: choice.current
            onChosen: index => choice.chosen(index)
        }
    }
}
