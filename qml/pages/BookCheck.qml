pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// Looks the book over: that nothing is damaged and that what is shown is what was written.
Strip {
    id: strip

    required property RoomModel room

    readonly property bool underWay: strip.room.check === RoomModel.UnderWay
    readonly property bool unsound: strip.room.check === RoomModel.Unsound

    bar: strip.unsound ? Tokens.stop : "transparent"
    spacing: Tokens.space8

    StripTitle {
        width: parent.width
        name: qsTr("The book")
    }
    StepText {
        objectName: "bookFile"
        width: parent.width
        step: Tokens.reason
        color: Tokens.inkSoft
        wrapMode: Text.WrapAnywhere
        text: strip.room.file
    }
    StepText {
        width: parent.width
        visible: text !== ""
        step: Tokens.bodyStrong
        color: strip.unsound ? Tokens.stop : Tokens.ok
        text: strip.room.checkText
        Accessible.role: Accessible.AlertMessage
        Accessible.name: text
    }
    Repeater {
        model: strip.room.findings

        StepText {
            required property string modelData

            width: parent.width
            step: Tokens.reason
            text: modelData
        }
    }
    ActionButton {
        width: parent.width
        kind: "secondary"
        glyph: "check"
        text: qsTr("Look it over")
        busy: strip.underWay
        busyText: qsTr("Looking")
        onActivated: strip.room.checkBook()
    }
    ActionButton {
        width: parent.width
        visible: strip.room.canRepair
        glyph: "tools"
        text: qsTr("Put it right from the entries")
        onActivated: strip.room.repairBook()
    }
}
