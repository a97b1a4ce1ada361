import QtQuick
import Burrow.Components

// Something that a spreadsheet leaves open, with the answers it may have. Emits answered(index), or
// chooses() where there are more than a few.
Strip {
    id: question

    required property var modelData

    readonly property var options: question.modelData.options
    readonly property bool few: question.options.length <= 3

    signal answered(int index)
    signal chooses

    bar: question.modelData.open ? Tokens.warn : "transparent"
    spacing: Tokens.space8

    StepText {
        width: parent.width
        step: question.modelData.open ? Tokens.bodyStrong : Tokens.body
        text: question.modelData.text
    }
    ChoiceTiles {
        width: parent.width
        visible: question.few && question.options.length > 0
        name: question.modelData.text
        options: question.few ? question.options : []
        onChosen: index => question.answered(index)
    }
    ActionButton {
        width: parent.width
        visible: !question.few
        kind: "secondary"
        glyph: "chevron-down"
        text: qsTr("Answer")
        Accessible.name: qsTr("Answer: %1").arg(question.modelData.text)
        onActivated: question.chooses()
    }
}
