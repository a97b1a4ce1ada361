pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// Whose moult it is: what the tag in a photo says, the question where that is not clear, and a line for the
// number where no tag says it.
Column {
    id: whose

    required property MoultFiling filing
    property bool unfiled: false

    spacing: Tokens.betweenStrips

    MessageStrip {
        width: parent.width
        visible: whose.filing.note !== ""
        tone: "ok"
        happened: whose.filing.note
        actionText: qsTr("Not this one")
        onActed: whose.filing.release()
    }
    Strip {
        width: parent.width
        visible: whose.filing.question !== ""
        bar: Tokens.warn
        spacing: Tokens.space12

        StepText {
            width: parent.width
            step: Tokens.heading
            text: whose.filing.question
            Accessible.role: Accessible.AlertMessage
        }
        ChoiceTiles {
            width: parent.width
            name: whose.filing.question
            options: whose.filing.choices
            onChosen: index => whose.filing.choose(index)
        }
    }
    Strip {
        width: parent.width
        visible: whose.unfiled && whose.filing.question === ""
        spacing: Tokens.space12

        Heading {
            width: parent.width
            level: 2
            text: qsTr("Whose moult is it?")
        }
        StepText {
            width: parent.width
            step: Tokens.reason
            color: Tokens.inkSoft
            text: qsTr("A photo with the animal's own tag in it says so by itself.")
        }
        TextLine {
            id: number
            width: parent.width
            code: true
            label: qsTr("Or type its number")
            error: whose.filing.error
            clearText: qsTr("Empty the number")
            field.maximumLength: 40
            onEdited: whose.filing.clearError()
            onAccepted: whose.filing.whose(number.text)
        }
        ActionButton {
            width: parent.width
            kind: "secondary"
            glyph: "tag"
            enabled: number.text.trim() !== ""
            text: qsTr("It is this one's")
            onActivated: whose.filing.whose(number.text)
        }
    }
}
