pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// The rows that can't be read, each with its line, its column and the reason.
Strip {
    id: strip

    required property BringModel bring

    bar: Tokens.warn
    spacing: Tokens.space12

    StepText {
        width: parent.width
        step: Tokens.bodyStrong
        color: Tokens.warn
        text: strip.bring.badText
        Accessible.role: Accessible.AlertMessage
        Accessible.name: text
    }
    Repeater {
        model: strip.bring.badRows

        Column {
            id: row

            required property var modelData

            width: parent.width

            StepText {
                width: parent.width
                step: Tokens.reasonStrong
                text: row.modelData.where
            }
            StepText {
                width: parent.width
                step: Tokens.reason
                text: row.modelData.reason
            }
            StepText {
                width: parent.width
                visible: text !== ""
                step: Tokens.tick
                color: Tokens.inkSoft
                wrapMode: Text.WrapAnywhere
                text: row.modelData.raw
            }
        }
    }
    StepText {
        width: parent.width
        visible: text !== ""
        step: Tokens.reason
        text: strip.bring.moreBad
    }
    StepText {
        width: parent.width
        step: Tokens.reason
        color: Tokens.inkSoft
        text: qsTr("Correct them and choose the file again, or leave them out: they go to a file of their own.")
    }
}
