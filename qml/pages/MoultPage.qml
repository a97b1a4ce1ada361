import QtQuick
import Burrow.Components
import Burrow.ViewModels

// A moult was found: photograph it, measure it, and say when. One act saves all of it.
ScrollPage {
    id: page

    required property Kit kit
    // Empty where the tag in a photo, or the keeper, is to say whose moult it is.
    property string subject
    // A moult on record, to which photos are added; empty for one that was found.
    property string moult
    // Photos to begin with.
    property list<url> files

    readonly property MoultModel model: MoultModel {
        desk: page.kit.desk
        darkroom: page.kit.darkroom
        photographer: page.kit.photographer
        scanner: page.kit.scanner
        subject: page.subject
        moult: page.moult
        onLeft: page.kit.navigation.backed()
    }

    function openCamera() {
        page.kit.navigation.pushed("MoultCameraPage", {
            "moult": page.model
        });
    }

    spacing: Tokens.betweenStrips
    Component.onCompleted: page.model.addFiles(page.files)

    Heading {
        width: parent.width
        bottomPadding: Tokens.space8
        text: page.model.missing ? qsTr("This book has no such animal") : page.model.adding ? page.model.addingTo : qsTr("Moult found")
    }
    TroubleSlot {
        width: parent.width
        trouble: page.kit.desk.trouble
        onDismissed: page.kit.desk.dismissTrouble()
    }
    MoultWhose {
        width: parent.width
        visible: !page.model.missing && !page.model.saved && !page.model.adding
        filing: page.model.filing
        unfiled: page.model.unfiled
    }
    LabelHeader {
        width: parent.width
        visible: !page.model.missing && !page.model.unfiled
        punch: page.model.punch
        tag: page.model.tag
        binomial: page.model.binomial
        about: page.model.about
    }
    MoultSaved {
        width: parent.width
        visible: page.model.saved
        model: page.model
        onSexWanted: page.kit.navigation.pushed("SexPage", {
            "moult": page.model.toSex
        })
        onPhotosWanted: page.kit.navigation.replaced("MoultPage", {
            "moult": page.model.savedMoult
        })
        onMeasureWanted: page.kit.navigation.pushed("MeasurePage", {
            "moult": page.model.toMeasure
        })
    }
    MoultPhotos {
        width: parent.width
        visible: !page.model.missing && !page.model.saved
        model: page.model
        onCameraWanted: page.openCamera()
        onFilesWanted: chooser.open()
    }
    MoultFields {
        width: parent.width
        visible: !page.model.missing && !page.model.saved && !page.model.adding
        model: page.model
    }
    FileChooser {
        id: chooser
        title: qsTr("Photos of the moult")
        filters: [qsTr("Photos (*.jpg *.jpeg *.png)"), qsTr("All files (*)")]
        onFilesChosen: files => page.model.addFiles(files)
    }
    lower: [
        MessageStrip {
            width: parent.width
            visible: page.model.warned && !page.model.saved
            happened: qsTr("The photos are not saved yet.")
            advice: page.model.adding ? qsTr("Save them, or go back once more to leave them.") : qsTr("Save the moult, or go back once more to leave them.")
        },
        UndoOverlay {
            width: parent.width
            visible: page.model.saved
            kit: page.kit
        }
    ]
    bar: ContextBar {
        width: parent.width
        backText: qsTr("Back")
        mainText: page.model.missing ? "" : page.model.saved ? qsTr("Done") : page.model.adding ? qsTr("Save the photos") : qsTr("Save moult")
        mainGlyph: "check"
        mainEnabled: page.model.saved || page.model.canSave
        busy: page.model.busy
        busyText: qsTr("Saving")
        helperText: page.model.missing || page.model.saved ? "" : qsTr("Photo")
        helperGlyph: "camera"
        onBack: page.model.leave()
        onMain: page.model.saved ? page.kit.navigation.backed() : page.model.save()
        onHelper: page.openCamera()
    }
}
