import QtQuick
import Burrow.Components
import Burrow.ViewModels

// A length in a photo of a moult: two ends are dragged, or it is typed. The photo stays in place while the
// rest scrolls below it.
PageFrame {
    id: page

    required property Kit kit
    required property string moult

    readonly property MeasureModel model: MeasureModel {
        desk: page.kit.desk
        darkroom: page.kit.darkroom
        moult: page.moult
    }

    Heading {
        anchors.centerIn: parent
        width: page.contentWidth
        visible: page.model.missing
        horizontalAlignment: Text.AlignHCenter
        text: qsTr("This book has no such moult")
    }
    MeasurePhoto {
        id: photo
        width: parent.width
        height: Math.round(parent.height * 0.46)
        visible: !page.model.missing
        focus: true
        model: page.model
    }
    ScrollArea {
        anchors.top: photo.bottom
        anchors.bottom: parent.bottom
        width: parent.width
        visible: !page.model.missing
        contentHeight: column.height + Tokens.space48

        Column {
            id: column
            x: page.contentX
            width: page.contentWidth
            topPadding: Tokens.betweenStrips
            spacing: Tokens.betweenStrips

            TroubleSlot {
                width: parent.width
                trouble: page.kit.desk.trouble
                onDismissed: page.kit.desk.dismissTrouble()
            }
            MeasureResult {
                width: parent.width
                model: page.model
                onMatWanted: page.kit.navigation.pushed("MatPage", {
                    "asked": page.model.unmeasuredMat
                })
            }
            MeasureChoices {
                width: parent.width
                model: page.model
            }
            MeasureHistory {
                width: parent.width
                model: page.model
                onOpened: (name, properties) => page.kit.navigation.pushed(name, properties)
            }
            LabelHeader {
                width: parent.width
                visible: page.model.tag !== ""
                tag: page.model.tag
                binomial: page.model.binomial
                about: page.model.about
            }
        }
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
        mainText: page.model.missing ? "" : qsTr("Save the length")
        mainGlyph: "check"
        mainEnabled: page.model.canSave
        busy: page.model.busy
        busyText: qsTr("Saving")
        helperText: page.model.canMeasure ? qsTr("Whole") : ""
        helperGlyph: "image"
        onBack: page.kit.navigation.backed()
        onMain: page.model.save()
        onHelper: photo.whole()
    }
}
