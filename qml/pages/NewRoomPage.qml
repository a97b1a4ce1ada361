import QtQuick
import Burrow.Components
import Burrow.ViewModels

// The first thing a book needs: what its room is called. Asked once; then on to the page that was wanted.
BookPage {
    id: page

    // Where to go once the book is there.
    required property string then

    readonly property NewRoomModel room: NewRoomModel {
        desk: page.kit.desk
        bookcase: page.kit.bookcase
        onStarted: page.kit.navigation.replaced(page.then, {})
    }
    // Follows the name until it is changed by hand.
    property bool codeIsOwn: false

    function start() {
        page.room.start(name.text, code.text);
    }

    title: qsTr("Name your room")
    sub: qsTr("Both can be changed later.")
    mainText: qsTr("Start the book")
    mainGlyph: "check"
    mainEnabled: name.text.trim() !== ""
    busy: page.room.busy
    onMain: page.start()
    lower: FormTrouble {
        width: parent.width
        happened: page.room.trouble
    }

    TextLine {
        id: name
        width: parent.width
        label: qsTr("Name of the room")
        hint: qsTr("As you call it, such as Kiln Row")
        error: page.room.nameError
        clearText: qsTr("Empty the name")
        field.maximumLength: 80
        onEdited: if (!page.codeIsOwn)
            code.text = page.room.codeOf(name.text)
        onAccepted: page.start()
    }
    Item {
        width: 1
        height: Tokens.space8
    }
    TextLine {
        id: code
        width: parent.width
        code: true
        label: qsTr("Code on tags and sheets")
        hint: qsTr("A few letters or digits, such as KR")
        error: page.room.codeError
        clearText: qsTr("Empty the code")
        field.maximumLength: 12
        onEdited: page.codeIsOwn = text !== ""
        onAccepted: page.start()
    }
}
