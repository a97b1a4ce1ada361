import QtQuick
import Burrow.Components

// The ways to what the whole room needs: homes and air.
Column {
    id: care

    required property Kit kit

    spacing: Tokens.betweenStrips

    SectionHead {
        width: parent.width
        name: qsTr("The room itself")
    }
    WayRow {
        width: parent.width
        glyph: "rehouse"
        text: qsTr("Homes")
        sub: qsTr("Who has outgrown its own, and what stands empty")
        onActivated: care.kit.navigation.pushed("HomesPage", {})
    }
    WayRow {
        width: parent.width
        glyph: "warmth"
        text: qsTr("Air")
        sub: qsTr("Temperature and humidity by place")
        onActivated: care.kit.navigation.pushed("AirPage", {})
    }
}
