import QtQuick
import Burrow.ViewModels

// A new animal, group or lot, or what is known of one, to change.
FormPage {
    id: page

    property string subject
    // Of a scanned tag that hangs on nobody yet.
    property string tagCode
    property real tagSide: 0

    readonly property AnimalForm animal: AnimalForm {
        desk: page.kit.desk
        subject: page.subject
        tagCode: page.tagCode
        tagSide: page.tagSide
    }

    form: page.animal
    saveText: page.animal.saveText
    onKept: thing => {
        if (page.subject === "")
            page.kit.navigation.replaced("AnimalPage", {
                "subject": thing
            });
        else
            page.kit.navigation.backed();
    }
}
