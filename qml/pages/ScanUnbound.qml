import QtQuick
import Burrow.Components
import Burrow.ViewModels

// A tag of ours that hangs on nobody yet: for a new animal, or for one that has lost its tag.
Strip {
    id: strip

    required property ScanModel scan

    signal newWanted

    spacing: Tokens.space8
    bar: Tokens.warn

    StepText {
        width: parent.width
        step: Tokens.bodyStrong
        text: qsTr("No animal has this tag yet")
    }
    TagText {
        width: parent.width
        text: strip.scan.unboundCode
    }
    ActionButton {
        width: parent.width
        glyph: "plus"
        text: qsTr("Tag a new animal")
        onActivated: strip.newWanted()
    }
    TextLine {
        id: number
        width: parent.width
        code: true
        label: qsTr("Or the number of an animal")
        clearText: qsTr("Empty")
        onAccepted: strip.scan.hangOn(number.text)
    }
    ActionButton {
        width: parent.width
        kind: "secondary"
        glyph: "tag"
        enabled: number.text.trim() !== ""
        text: qsTr("Hang it on this animal")
        onActivated: strip.scan.hangOn(number.text)
    }
    ActionButton {
        width: parent.width
        kind: "plain"
        text: qsTr("Scan again")
        onActivated: strip.scan.clear()
    }
}
