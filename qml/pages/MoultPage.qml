import QtQuick
import Burrow.Components
import Burrow.ViewModels

// A moult was found: photograph it, measure it, and say when. One act saves all of it.
ScrollPage {
    id: page

    required property Kit kit
    // Empty where the tag in a photo, or the keeper, is to say whose moult it is.
    property string subject

    readonly property MoultModel model: MoultModel {
        desk: page.kit.desk
        darkroom: page.kit.darkroom
        photographer: page.kit.photographer
        scanner: page.kit.scanner
        subject: page.subject
    }
    // Photos that are not saved yet are not left behind by one touch.
    property bool warned: false

    function openCamera() {
        page.kit.navigation.pushed("MoultCameraPage", {
            "moult": page.model
        });
    }
    function leave() {
        if (page.model.saved || page.model.photos.length === 0 || page.warned)
            page.kit.navigation.backed();
        else
            page.warned = true;
    }

    spacing: Tokens.betweenStrips

    Heading {
        width: parent.width
        bottomPadding: Tokens.space8
        text: page.model.missing ? qsTr("This book has no such animal") : qsTr("Moult found")
    }
    TroubleSlot {
        width: parent.width
        trouble: page.kit.desk.trouble
        onDismissed: page.kit.desk.dismissTrouble()
    }
    MoultWhose {
        width: parent.width
        visible: !page.model.missing && !page.model.saved
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
        onSexWanted: page.kit.navigation.replaced("SexPage", {
            "moult": page.model.toSex
        })
        onMeasureWanted: page.kit.navigation.replaced("MeasurePage", {
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
        visible: !page.model.missing && !page.model.saved
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
            visible: page.warned && !page.model.saved
            happened: qsTr("The photos are not saved yet.")
            advice: qsTr("Save the moult, or go back once more to leave them.")
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
        mainText: page.model.missing ? "" : page.model.saved ? qsTr("Done") : qsTr("Save moult")
        mainGlyph: "check"
        mainEnabled: !page.model.developing && !page.model.unfiled
        busy: page.model.busy
        busyText: qsTr("Saving")
        helperText: page.model.missing || page.model.saved ? "" : qsTr("Photo")
        helperGlyph: "camera"
        onBack: page.leave()
        onMain: page.model.saved ? page.kit.navigation.backed() : page.model.save()
        onHelper: page.openCamera()
    }
}
