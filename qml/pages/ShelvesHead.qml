import QtQuick
import Burrow.Components
import Burrow.ViewModels

// Over the shelves: the room, which opens what belongs to it as a whole, a new animal, and how the room is
// shown. Emits chosen(asList).
Column {
    id: head

    required property Kit kit
    required property ShelvesModel list
    required property bool asList

    signal chosen(bool asList)

    topPadding: Tokens.space8
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
    ActionButton {
        width: parent.width
        visible: !head.list.blank
        kind: "secondary"
        glyph: "plus"
        text: qsTr("New animal")
        onActivated: head.kit.navigation.pushed("AnimalFormPage", {})
    }
    ChoiceTiles {
        width: parent.width
        visible: !head.list.blank
        name: qsTr("How the room is shown")
        options: [
            {
                "word": qsTr("Map"),
                "sub": qsTr("a hole for each tub")
            },
            {
                "word": qsTr("List"),
                "sub": qsTr("everyone by name")
            }
        ]
        current: head.asList ? 1 : 0
        onChosen: index => head.chosen(index === 1)
    }
    SwitchRow {
        width: parent.width
        visible: !head.list.blank && head.asList
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
        sentence: qsTr("Nobody is kept here now")
        detail: qsTr("Those who left can be shown in the list.")
    }
}
