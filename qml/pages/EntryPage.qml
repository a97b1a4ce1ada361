import QtQuick
import Burrow.Components
import Burrow.Ports
import Burrow.ViewModels

// One entry: what happened, how it came to read as it does, and the ways to correct it.
BookPage {
    id: page

    required property string entry

    readonly property EntryModel model: EntryModel {
        desk: page.kit.desk
        entry: page.entry
        onTakenOut: page.kit.navigation.backed()
    }
    readonly property FactForm form: FactForm {
        desk: page.kit.desk
        onSaved: page.form.close()
    }
    readonly property bool shown: page.model.ready && !page.form.open

    function amend() {
        page.form.amend(page.entry);
        page.contentY = 0;
        page.forceActiveFocus(Qt.OtherFocusReason);
    }

    title: page.model.title
    sub: page.model.day
    backHeld: page.form.open
    mainText: page.form.open ? page.form.saveText : page.shown ? qsTr("Amend") : ""
    mainGlyph: page.form.open ? "check" : "edit"
    busy: page.form.busy || page.model.busy
    onBack: page.form.close()
    onMain: {
        if (page.form.open)
            page.form.save();
        else
            page.amend();
    }
    lower: FormTrouble {
        width: parent.width
        happened: page.form.error
    }

    GoneStrip {
        width: parent.width
        visible: page.model.missing
    }
    LabelHeader {
        width: parent.width
        visible: page.model.ready
        tag: page.model.tag
        binomial: page.model.binomial
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
    PhotoView {
        width: parent.width
        height: visible ? Math.round(width * 3 / 4) : 0
        visible: page.shown && page.model.hasPicture
        source: page.model.picture
        longestSide: 1600
        warm: !Tokens.day
        Accessible.role: Accessible.Graphic
        Accessible.name: page.model.title
    }
    LineList {
        width: parent.width
        visible: page.shown && page.model.lines.length > 0
        rows: page.model.lines
    }
    LineList {
        width: parent.width
        visible: page.shown && page.model.readings.length > 0
        title: qsTr("How it came to read like this")
        rows: page.model.readings
    }
    Item {
        width: parent.width
        height: Tokens.space8
    }
    ActionButton {
        width: parent.width
        visible: page.shown && page.model.toSex !== ""
        kind: "secondary"
        glyph: "look"
        text: qsTr("Look at it for the sex")
        onActivated: page.kit.navigation.pushed("SexPage", {
            "moult": page.model.toSex
        })
    }
    ActionButton {
        width: parent.width
        visible: page.shown && page.model.toMeasure !== ""
        kind: "secondary"
        glyph: "ruler"
        text: qsTr("Measure this moult")
        onActivated: page.kit.navigation.pushed("MeasurePage", {
            "moult": page.model.toMeasure
        })
    }
    ActionButton {
        width: parent.width
        visible: page.shown && page.model.toPhotograph !== ""
        kind: "secondary"
        glyph: "camera"
        text: qsTr("Add photos")
        onActivated: page.kit.navigation.pushed("MoultPage", {
            "moult": page.model.toPhotograph
        })
    }
    ActionButton {
        width: parent.width
        visible: page.shown
        kind: "secondary"
        glyph: "remove"
        text: qsTr("Take it out of the history")
        enabled: !page.model.busy
        onActivated: page.model.takeOut()
    }
    StepText {
        width: parent.width
        visible: page.shown
        topPadding: step.above + Tokens.space4
        step: Tokens.reason
        color: Tokens.inkSoft
        text: qsTr("It no longer counts for what is due. The book itself forgets nothing.")
    }
}
