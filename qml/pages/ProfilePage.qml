pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// All that is known here of a species, line by line with its source; what to be careful of comes first.
BookPage {
    id: page

    required property string species

    readonly property ProfileModel profile: ProfileModel {
        desk: page.kit.desk
        species: page.species
    }

    title: page.profile.missing ? qsTr("Species") : ""

    GoneStrip {
        width: parent.width
        visible: page.profile.missing
    }
    Latin {
        width: parent.width
        visible: !page.profile.missing
        large: true
        text: page.profile.name
    }
    StepText {
        width: parent.width
        bottomPadding: Tokens.space8
        step: Tokens.reason
        color: Tokens.inkSoft
        text: page.profile.kind
    }
    Repeater {
        model: page.profile.cautions

        MessageStrip {
            required property var modelData

            width: parent.width
            tone: "stop"
            happened: modelData.word
            advice: modelData.advice
        }
    }
    LineList {
        width: parent.width
        visible: page.profile.lines.length > 0
        rows: page.profile.lines
    }
}
