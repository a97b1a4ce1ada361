import QtQuick
import Burrow.Components
import Burrow.ViewModels

// A count with minus and plus.
Item {
    id: view

    required property FormField entry
    required property Kit kit

    implicitHeight: row.height + 2 * Tokens.space4

    StripGround {
        anchors.fill: parent
    }
    StepRow {
        id: row
        x: Tokens.stripPadding
        y: Tokens.space4
        width: parent.width - Tokens.stripPadding - Tokens.rowPadding
        name: view.entry.label
        value: view.entry.count
        canLess: view.entry.count > view.entry.least
        canMore: view.entry.count < view.entry.most
        tappable: true
        onLess: view.entry.setCount(view.entry.count - 1)
        onMore: view.entry.setCount(view.entry.count + 1)
        onOpened: sheet.open()
    }
    BottomSheet {
        id: sheet
        title: view.entry.label
        closeText: qsTr("Done")
        onOpened: line.field.forceActiveFocus(Qt.OtherFocusReason)

        TextLine {
            id: line
            width: parent.width
            code: true
            label: view.entry.label
            text: view.entry.count
            field.maximumLength: 5
            field.inputMethodHints: Qt.ImhDigitsOnly
            onAccepted: sheet.close()
        }
        onClosed: view.entry.setCount(Number(line.text))
    }
}
