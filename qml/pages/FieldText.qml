pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// A field to type in, with what may be meant below it.
Column {
    id: view

    required property FormField entry
    required property Kit kit

    readonly property bool numeric: view.entry.type === FormField.Number

    spacing: Tokens.space8

    TextLine {
        width: parent.width
        label: view.entry.label
        hint: view.entry.hint
        error: view.entry.error
        code: view.entry.type !== FormField.Text
        text: view.entry.text
        clearText: qsTr("Empty %1").arg(view.entry.label)
        field.maximumLength: 1000
        field.inputMethodHints: view.numeric ? Qt.ImhFormattedNumbersOnly : Qt.ImhNone
        onEdited: view.entry.enter(text)
    }
    StepText {
        width: parent.width
        visible: text !== ""
        step: Tokens.reason
        color: Tokens.warn
        text: view.entry.notice
    }
    Flow {
        width: parent.width
        visible: view.entry.suggestions.length > 0
        spacing: Tokens.betweenTargets

        Repeater {
            model: view.entry.suggestions

            PressArea {
                id: chip

                required property string modelData

                width: Math.min(implicitWidth, view.width)
                implicitHeight: Math.max(Tokens.target, contentItem.implicitHeight + Tokens.space16)
                leftPadding: Tokens.space16
                rightPadding: Tokens.space16
                text: chip.modelData
                Accessible.name: qsTr("%1: %2").arg(view.entry.label).arg(chip.text)
                onActivated: view.entry.enter(chip.modelData)

                contentItem: ButtonLabel {
                    step: Tokens.reasonStrong
                    text: chip.text
                    color: Tokens.ink
                }
                background: Rectangle {
                    radius: Tokens.radiusControl
                    color: chip.down ? Tokens.pressed : Tokens.raised
                    border.width: Tokens.lineControl
                    border.color: Tokens.edge
                }
            }
        }
    }
}
