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
    readonly property ProfileFiles files: ProfileFiles {
        desk: page.kit.desk
        sharer: page.kit.sharer
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
            detail: qsTr("An animal can be kept under any name. Its care sheet then says that nothing is known, until you add the species.")
        }
        ProfileFilesDone {
            width: parent.width
            files: page.files
        }
        WayRow {
            width: parent.width
            visible: page.species.filter === ""
            glyph: "bring-in"
            text: qsTr("Take species in from a file")
            sub: qsTr("They become your own, and can be undone")
            onActivated: chooser.open()
        }
        WayRow {
            width: parent.width
            visible: page.species.filter === "" && page.files.ownCount > 0
            glyph: "send"
            text: qsTr("Give your own away as a file")
            sub: qsTr("Yours: %1").arg(page.files.ownCount)
            onActivated: folderChooser.open()
        }
    }
    FileChooser {
        id: chooser
        title: qsTr("Files of species")
        filters: [qsTr("Species profiles (*.json)"), qsTr("All files (*)")]
        onFilesChosen: files => page.files.takeIn(files[0])
    }
    FileChooser {
        id: folderChooser
        folders: true
        title: qsTr("Where to save your species")
        onFolderChosen: folder => page.files.saveTo(folder)
    }
    UndoOverlay {
        anchors.bottom: parent.bottom
        anchors.bottomMargin: Tokens.space12
        x: page.contentX
        width: page.contentWidth
        kit: page.kit
    }
    bar: ContextBar {
        width: parent.width
        backText: qsTr("Back")
        mainText: qsTr("Add a species")
        mainGlyph: "plus"
        onBack: page.kit.navigation.backed()
        onMain: page.kit.navigation.pushed("ProfileFormPage", {
            "suggested": page.species.filter
        })
    }
}
