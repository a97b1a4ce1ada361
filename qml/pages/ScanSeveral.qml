pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// Several animals behind one tag: which one is meant?
Strip {
    id: strip

    required property ScanModel scan

    spacing: Tokens.space4

    StepText {
        width: parent.width
        step: Tokens.bodyStrong
        text: qsTr("Several live behind this tag")
    }
    Repeater {
        model: strip.scan.choices

        PickRow {
            required property var modelData

            width: parent.width
            name: modelData.tag
            value: modelData.binomial
            onActivated: strip.scan.choose(modelData.subject)
        }
    }
    ActionButton {
        width: parent.width
        kind: "plain"
        text: qsTr("Scan again")
        onActivated: strip.scan.clear()
    }
}
