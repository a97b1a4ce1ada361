import QtQuick
import Burrow.Components
import Burrow.ViewModels

// Yes or no.
SwitchRow {
    id: view

    required property FormField entry
    required property Kit kit

    text: view.entry.label
    sub: view.entry.hint
    on: view.entry.on
    wordOn: qsTr("Yes")
    wordOff: qsTr("No")
    onToggled: on => view.entry.turn(on)
}
