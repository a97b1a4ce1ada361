pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// One rule of thumb: whom its value is for, the value, and every layer with where it comes from. What
// would change is shown before anything is written.
FormPage {
    id: page

    required property string rule
    // Opened for this animal.
    property string subject

    readonly property RuleForm rules: RuleForm {
        desk: page.kit.desk
        rule: page.rule
        subject: page.subject
        onPreviewWanted: (key, value) => page.kit.navigation.pushed("RulePreviewPage", {
            "key": key,
            "value": value
        })
    }

    form: page.rules
    sub: page.rules.holding
    saveText: qsTr("See what changes")
    mainGlyph: "look"

    SectionHead {
        width: parent.width
        visible: page.rules.layers.length > 0
        name: qsTr("Where it comes from")
    }
    Repeater {
        model: page.rules.layers

        RuleLayer {
            id: layer

            required property var modelData

            width: page.contentWidth
            value: layer.modelData.value
            from: layer.modelData.from
            source: layer.modelData.source
            note: layer.modelData.note
            holds: layer.modelData.holds
            own: layer.modelData.key !== ""
            onTakenBack: page.rules.takeBack(layer.modelData.key)
        }
    }
    SectionHead {
        width: parent.width
        visible: page.rules.others.length > 0
        name: qsTr("For others")
    }
    Repeater {
        model: page.rules.others

        RuleOther {
            id: other

            required property var modelData

            width: page.contentWidth
            value: other.modelData.value
            from: other.modelData.from
            own: other.modelData.key !== ""
            onOpened: page.rules.turnTo(other.modelData.key)
        }
    }
}
