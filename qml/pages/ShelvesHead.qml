import QtQuick
import Burrow.Components
import Burrow.ViewModels

// Over the shelves: the room, which opens what belongs to it as a whole, the search, and a new animal.
Column {
    id: head

    required property Kit kit
    required property ShelvesModel list

    readonly property bool searching: head.list.query.trim() !== ""

    topPadding: Tokens.space16
    bottomPadding: Tokens.space8
    spacing: Tokens.space8

    RoomButton {
        width: parent.width
        name: head.kit.desk.roomName
        note: head.list.summary
        onActivated: head.kit.navigation.pushed("RoomPage", {})
    }
    StepText {
        width: parent.width
        visible: head.kit.desk.demo
        step: Tokens.reason
        color: Tokens.est
        text: qsTr("An invented room to look around in. Nothing here is real.")
    }
    TroubleSlot {
        width: parent.width
        trouble: head.kit.desk.trouble
        onDismissed: head.kit.desk.dismissTrouble()
    }
    SearchLine {
        width: parent.width
        visible: !head.list.blank
        placeholder: qsTr("Number, species, place or note")
        clearText: qsTr("Empty the search")
        text: head.list.query
        onEdited: head.list.query = text
    }
    ActionButton {
        width: parent.width
        visible: !head.list.blank && !head.searching
        kind: "secondary"
        glyph: "plus"
        text: qsTr("New animal")
        onActivated: head.kit.navigation.pushed("AnimalFormPage", {})
    }
    SwitchRow {
        width: parent.width
        visible: !head.list.blank && !head.searching
        text: qsTr("Also those who left")
        wordOn: qsTr("Yes")
        wordOff: qsTr("No")
        on: head.list.withGone
        onToggled: on => head.list.withGone = on
    }
    EmptyStrip {
        width: parent.width
        visible: head.list.blank
        sentence: qsTr("Tag your first tub")
        detail: qsTr("Give it a number and a species. The line under the label fills in as it feeds and moults.")
        actionText: qsTr("Tag an animal")
        actionGlyph: "plus"
        onActed: head.kit.navigation.pushed("AnimalFormPage", {})
    }
    EmptyStrip {
        width: parent.width
        visible: !head.list.blank && head.list.count === 0
        drawing: "shelf"
        sentence: head.searching ? qsTr("Nobody here is called that") : qsTr("Nobody is kept here now")
        detail: head.searching ? qsTr("Try part of the number, of any name of the species, or of a note.")
                               : qsTr("Those who left can be shown.")
    }
}
