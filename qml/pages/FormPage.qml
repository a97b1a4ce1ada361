import QtQuick
import Burrow.Components
import Burrow.ViewModels

// A form as a page. What was filled in is not left behind by one touch of Back. Emits kept(thing) once
// it is saved.
BookPage {
    id: page

    required property FormModel form
    property string saveText: qsTr("Keep the change")
    property bool warned: false

    signal kept(string thing)

    title: page.form.title
    backHeld: true
    mainText: page.form.ready ? page.saveText : ""
    mainGlyph: "check"
    busy: page.form.busy
    onMain: page.form.save()
    onBack: {
        if (page.warned || !page.form.touched)
            page.kit.navigation.backed();
        else
            page.warned = true;
    }
    lower: [
        FormTrouble {
            width: parent.width
            happened: page.warned ? "" : page.form.error
        },
        MessageStrip {
            width: parent.width
            visible: page.warned
            happened: qsTr("What you filled in is not saved yet.")
            advice: qsTr("Save it, or go back once more to leave it.")
        }
    ]

    Connections {
        target: page.form

        function onSaved(thing: string) {
            page.kept(thing);
        }
        function onEdited() {
            page.warned = false;
        }
    }
    GoneStrip {
        width: parent.width
        visible: page.form.missing
    }
    FormView {
        width: parent.width
        visible: page.form.ready
        form: page.form
        kit: page.kit
    }
}
