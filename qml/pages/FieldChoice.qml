import QtQuick
import Burrow.Components
import Burrow.ViewModels

// One of a few.
Column {
    id: view

    required property FormField entry
    required property Kit kit

    spacing: Tokens.space4

    StepText {
        width: parent.width
        step: Tokens.label
        color: Tokens.inkSoft
        text: view.entry.label
        Accessible.ignored: true
    }
    ChoiceTiles {
        width: parent.width
        columns: Tokens.roundCompact ? 1 : view.entry.options.length >= 4 ? 2
                                                                        : view.entry.options.length
        name: view.entry.label
        options: view.entry.options
        current: view.entry.chosen
        onChosen: index => view.entry.choose(index)
    }
    StepText {
        width: parent.width
        visible: text !== ""
        step: Tokens.label
        color: Tokens.stop
        text: view.entry.error
    }
}
