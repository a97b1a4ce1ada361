import QtQuick.Layouts

// One of the other outcomes at the shelf: icon and word, 60 high; fills its cell of an OutcomeGrid.
// Emits activated().
ActionButton {
    kind: "secondary"
    Layout.fillWidth: true
    Layout.preferredWidth: 1
}
