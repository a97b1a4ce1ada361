import QtQuick
import Burrow.Components
import Burrow.ViewModels

// One row of a table of numbers. An empty line is the shipped number.
FormPage {
    id: page

    required property string row

    readonly property NumberForm numbers: NumberForm {
        desk: page.kit.desk
        row: page.row
    }

    form: page.numbers
    sub: page.numbers.table
    saveText: page.numbers.fixed ? "" : qsTr("Keep the change")
    onKept: page.kit.navigation.backed()

    Strip {
        width: parent.width
        visible: page.numbers.bound !== ""

        StepText {
            width: parent.width
            step: Tokens.reason
            color: Tokens.inkSoft
            text: page.numbers.bound
        }
    }
    ActionButton {
        width: parent.width
        visible: page.numbers.own
        kind: "secondary"
        glyph: "undo"
        text: qsTr("Shipped again")
        Accessible.name: qsTr("Shipped again: %1").arg(page.numbers.title)
        onActivated: page.numbers.shipAgain()
    }
}
