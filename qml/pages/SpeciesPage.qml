pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// The species that are known here, by any of their names.
PageFrame {
    id: page

    required property Kit kit

    readonly property SpeciesModel species: SpeciesModel {
        desk: page.kit.desk
    }

    StripList {
        anchors.fill: parent
        objectName: "speciesList"
        model: page.species
        head: head
        delegate: SpeciesStrip {
            required property var model

            x: page.contentX
            width: page.contentWidth
            name: model.name
            tradeNames: model.tradeNames
            note: model.note
            onActivated: page.kit.navigation.pushed("ProfilePage", {
                "species": model.name
            })
        }
    }
    Column {
        id: head
        x: page.contentX
        width: page.contentWidth
        bottomPadding: Tokens.space8
        spacing: Tokens.space8

        PageHead {
            width: parent.width
            title: qsTr("Species")
            sub: page.species.summary
            trouble: page.kit.desk.trouble
            onDismissed: page.kit.desk.dismissTrouble()
        }
        SearchLine {
            width: parent.width
            placeholder: qsTr("Any name")
            clearText: qsTr("Empty the search")
            text: page.species.filter
            onEdited: page.species.filter = text
        }
        EmptyStrip {
            width: parent.width
            visible: page.species.count === 0
            sentence: qsTr("No species by that name")
            detail: qsTr("An animal can be kept under any name. Its care sheet then says that nothing is known.")
        }
    }
    bar: ContextBar {
        width: parent.width
        backText: qsTr("Back")
        onBack: page.kit.navigation.backed()
    }
}
