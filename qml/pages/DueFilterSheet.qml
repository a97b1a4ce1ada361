pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// What of the due list is to be shown: late or held lines, kinds of care, a rack, quarantine apart or not.
BottomSheet {
    id: sheet

    required property DueFilterModel filter

    title: qsTr("What is shown")
    closeText: qsTr("Close")
    mainText: sheet.filter.active ? qsTr("Show everything") : ""
    mainGlyph: "cross"
    onMain: {
        sheet.filter.clear();
        sheet.close();
    }
    onAboutToShow: sheet.filter.asking = true
    onClosed: sheet.filter.asking = false

    ChoiceTiles {
        width: parent.width
        name: qsTr("Which lines")
        options: [
            {
                "word": qsTr("All")
            },
            {
                "word": qsTr("Late")
            },
            {
                "word": qsTr("On hold")
            }
        ]
        current: sheet.filter.which
        onChosen: index => sheet.filter.which = index
    }
    Repeater {
        model: sheet.filter

        Column {
            id: choice

            required property var model

            width: parent.width

            SectionHead {
                width: parent.width
                visible: choice.model.first
                name: choice.model.place ? qsTr("Only there") : qsTr("Only this care")
            }
            SwitchRow {
                width: parent.width
                text: choice.model.word
                sub: choice.model.note
                wordOn: qsTr("Only")
                wordOff: qsTr("Any")
                on: choice.model.on
                onToggled: sheet.filter.toggle(choice.model.key)
            }
        }
    }
    SectionHead {
        width: parent.width
        name: qsTr("Quarantine")
    }
    SwitchRow {
        width: parent.width
        text: qsTr("Apart, after all others")
        sub: qsTr("So that nothing is carried from there to the rest.")
        wordOn: qsTr("Yes")
        wordOff: qsTr("No")
        on: sheet.filter.quarantineApart
        onToggled: on => sheet.filter.quarantineApart = on
    }
}
