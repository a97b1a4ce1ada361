pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// The fields of a form, one below the other.
Column {
    id: view

    required property FormModel form
    required property Kit kit

    spacing: Tokens.space12

    Repeater {
        model: view.form.fields

        FieldView {
            required property FormField modelData

            width: view.width
            entry: modelData
            kit: view.kit
        }
    }
}
