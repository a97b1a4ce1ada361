pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// An enclosure: who lives in it, its inner sizes and where it stands.
FormPage {
    id: page

    required property string enclosure

    readonly property EnclosureForm home: EnclosureForm {
        desk: page.kit.desk
        enclosure: page.enclosure
    }

    form: page.home
    onKept: page.kit.navigation.backed()

    Item {
        width: 1
        height: Tokens.space12
    }
    SectionHead {
        width: parent.width
        visible: page.home.residents.length > 0
        name: qsTr("Lives here")
    }
    Repeater {
        model: page.home.residents

        LabelHeader {
            id: label

            required property var modelData

            width: parent.width
            tag: modelData.tag
            binomial: modelData.binomial
            about: modelData.about

            ActionButton {
                kind: "plain"
                text: qsTr("Open %1").arg(label.tag)
                onActivated: page.kit.navigation.animal(label.modelData.subject)
            }
        }
    }
    EmptyStrip {
        width: parent.width
        visible: page.home.ready && page.home.residents.length === 0
        drawing: "line"
        sentence: qsTr("It stands empty")
        detail: qsTr("Whoever is rehoused into it is listed here.")
    }
}
