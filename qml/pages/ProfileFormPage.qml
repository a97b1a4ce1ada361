import QtQuick
import Burrow.ViewModels

// A species of the keeper's own: a new one, or one that is known here to change.
FormPage {
    id: page

    property string species
    property string suggested

    readonly property ProfileForm profile: ProfileForm {
        desk: page.kit.desk
        species: page.species
        suggested: page.suggested
    }

    form: page.profile
    saveText: page.species === "" ? qsTr("Add it") : qsTr("Keep the change")
    onKept: thing => {
        if (thing === page.species)
            page.kit.navigation.backed();
        else
            page.kit.navigation.replaced("ProfilePage", {
                "species": thing
            });
    }
}
