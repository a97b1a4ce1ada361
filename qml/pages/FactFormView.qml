pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// What happened, filled in: what to keep in mind, when, and the fields of its kind.
Column {
    id: view

    required property FactForm form
    required property Kit kit

    spacing: Tokens.space12

    Strip {
        width: parent.width
        visible: view.form.warnings.length > 0
        bar: Tokens.warn
        spacing: Tokens.space8

        Repeater {
            model: view.form.warnings

            StepText {
                required property string modelData
                required property int index

                width: parent.width
                step: index === 0 ? Tokens.reasonStrong : Tokens.reason
                text: modelData
            }
        }
    }
    WhenRow {
        width: parent.width
        day: view.form.when
    }
    FormView {
        width: parent.width
        form: view.form
        kit: view.kit
    }
}
