pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// What else is due at this tub: done with the same tap unless it is taken out.
Flow {
    id: extras

    required property RoundModel round

    spacing: Tokens.betweenTargets

    Repeater {
        model: extras.round.extras

        PressArea {
            id: extra

            required property int index
            required property var modelData

            width: Tokens.roundCompact ? extras.width : (extras.width - extras.spacing) / 2
            implicitHeight: Math.max(Tokens.shelfTarget, contentItem.implicitHeight + Tokens.space16)
            text: extra.modelData.text
            Accessible.role: Accessible.CheckBox
            Accessible.checked: extra.modelData.on
            onActivated: extras.round.toggleExtra(extra.index)

            contentItem: ButtonLabel {
                step: Tokens.action
                text: extra.text
                color: extra.modelData.on ? Tokens.ink : Tokens.inkSoft
                glyph: extra.modelData.on ? "check" : "minus"
            }
            background: Rectangle {
                radius: Tokens.radiusControl
                color: extra.down ? Tokens.pressed : extra.modelData.on ? Tokens.raised : "transparent"
                border.width: Tokens.lineControl
                border.color: extra.modelData.on ? Tokens.act : Tokens.edge
            }
        }
    }
}
