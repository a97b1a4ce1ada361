import QtQuick
import Burrow.Components
import Burrow.ViewModels

// Over those who were found: how many, or that there is nobody.
Column {
    id: head

    required property FindModel finds

    topPadding: Tokens.space8
    bottomPadding: Tokens.space8
    spacing: Tokens.space8

    StepText {
        width: parent.width
        step: Tokens.reason
        color: Tokens.inkSoft
        text: head.finds.summary
        Accessible.role: Accessible.StaticText
        Accessible.name: text
    }
    EmptyStrip {
        width: parent.width
        visible: head.finds.answered && head.finds.count === 0
        drawing: "shelf"
        sentence: qsTr("Nobody here is called that")
        detail: qsTr("Try the start of the number, of any name of the species, or of a word in a note.")
    }
}
