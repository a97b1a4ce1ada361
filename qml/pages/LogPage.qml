pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// What happened to it? A tile for each kind of thing: some are logged with the tap, the rest ask more.
BookPage {
    id: page

    required property string subject

    readonly property LogModel log: LogModel {
        desk: page.kit.desk
        subject: page.subject
        onLogged: page.kit.navigation.backed()
        onFormWanted: kind => page.begin(kind)
        onMoultWanted: page.kit.navigation.replaced("MoultPage", {
            "subject": page.subject
        })
        onPhotoWanted: page.kit.navigation.replaced("PhotoPage", {
            "subject": page.subject
        })
    }
    readonly property FactForm form: FactForm {
        desk: page.kit.desk
        onSaved: page.kit.navigation.backed()
    }

    function begin(kind: string) {
        page.form.begin(page.subject, kind);
        page.contentY = 0;
        page.forceActiveFocus(Qt.OtherFocusReason);
    }

    title: page.form.open ? page.form.title : qsTr("What happened?")
    backHeld: page.form.open
    mainText: page.form.open ? page.form.saveText : ""
    mainGlyph: "check"
    busy: page.form.busy
    onMain: page.form.save()
    onBack: page.form.close()
    lower: FormTrouble {
        width: parent.width
        happened: page.form.error
    }

    GoneStrip {
        width: parent.width
        visible: page.log.missing
    }
    LabelHeader {
        width: parent.width
        visible: !page.log.missing
        punch: page.log.punch
        tag: page.log.tag
        binomial: page.log.binomial
        about: page.form.open ? "" : page.log.about
    }
    Item {
        width: parent.width
        height: Tokens.space8
        visible: page.form.open
    }
    FactFormView {
        width: parent.width
        visible: page.form.open
        form: page.form
        kit: page.kit
    }
    Repeater {
        model: page.form.open ? [] : page.log.groups

        LogGroup {
            required property var modelData

            width: parent.width
            name: modelData.name
            tiles: modelData.tiles
            onChosen: kind => page.log.choose(kind)
        }
    }
}
