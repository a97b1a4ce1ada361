import QtQuick
import Burrow.Components
import Burrow.ViewModels

// What of the due list is shown, and the way to see all of it again with one tap. Emits changing().
Column {
    id: shown

    required property DueFilterModel filter

    signal changing

    ActionButton {
        // Its word stands where the words above it stand.
        x: -leftPadding
        width: Math.min(implicitWidth, parent.width)
        visible: !shown.filter.active
        kind: "plain"
        glyph: "filter"
        text: qsTr("Show a part")
        onActivated: shown.changing()
    }
    Column {
        width: parent.width
        visible: shown.filter.active
        topPadding: Tokens.space8
        spacing: Tokens.space8

        PickRow {
            width: parent.width
            bar: Tokens.warn
            name: qsTr("Only a part is shown")
            value: shown.filter.text
            onActivated: shown.changing()
        }
        ActionButton {
            width: parent.width
            kind: "secondary"
            glyph: "cross"
            text: qsTr("Show everything")
            onActivated: shown.filter.clear()
        }
    }
}
