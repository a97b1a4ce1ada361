import QtQuick
import Burrow.Components
import Burrow.ViewModels

// How many feeders of one size are there, and what a pack of them costs.
BottomSheet {
    id: sheet

    required property PreyModel prey

    function begin() {
        count.text = sheet.prey.chosenCount;
        price.text = sheet.prey.chosenPrice;
        sheet.prey.clearErrors();
        sheet.open();
    }

    title: sheet.prey.chosenName
    closeText: qsTr("Close")
    mainText: qsTr("Keep")
    mainGlyph: "check"
    onMain: sheet.prey.keep(count.text, price.text)

    TextLine {
        id: count
        width: parent.width
        code: true
        label: qsTr("How many are there now")
        hint: qsTr("Counted or guessed: the list goes by it.")
        error: sheet.prey.countError
        clearText: qsTr("Empty the count")
        field.maximumLength: 7
        field.inputMethodHints: Qt.ImhDigitsOnly
        onEdited: sheet.prey.clearErrors()
        onAccepted: sheet.main()
    }
    TextLine {
        id: price
        width: parent.width
        code: true
        label: qsTr("What a pack costs")
        hint: qsTr("In your own currency: 4.50 for 100. Never on a printed sheet.")
        error: sheet.prey.priceError
        placeholder: "4.50 for 100"
        clearText: qsTr("Empty the price")
        field.maximumLength: 24
        onEdited: sheet.prey.clearErrors()
        onAccepted: sheet.main()
    }
    ActionButton {
        width: parent.width
        visible: sheet.prey.chosenInStock
        kind: "secondary"
        glyph: "remove"
        text: qsTr("Not kept any more")
        onActivated: sheet.prey.forget()
    }
}
