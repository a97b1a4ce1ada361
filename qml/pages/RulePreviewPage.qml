pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// What a change of a rule would do in the coming four weeks. Nothing is written until it is saved here.
PageFrame {
    id: page

    required property Kit kit
    required property string key
    required property string value

    readonly property RulePreviewModel preview: RulePreviewModel {
        desk: page.kit.desk
        key: page.key
        value: page.value
        onKept: page.kit.navigation.backed()
    }

    StripList {
        anchors.fill: parent
        objectName: "previewList"
        model: page.preview
        head: head
        delegate: RulePreviewStrip {
            required property var model

            x: page.contentX
            width: page.contentWidth
            tag: model.tag
            binomial: model.binomial
            says: model.says
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
            title: qsTr("If you save this")
            sub: page.preview.says
            trouble: page.preview.trouble === "" ? page.kit.desk.trouble : page.preview.trouble
            onDismissed: page.kit.desk.dismissTrouble()
        }
        Strip {
            width: parent.width
            spacing: Tokens.space4

            StepText {
                width: parent.width
                step: Tokens.bodyStrong
                text: page.preview.change
            }
            StepText {
                width: parent.width
                step: Tokens.reason
                color: Tokens.inkSoft
                text: page.preview.summary
            }
        }
        LineList {
            width: parent.width
            visible: page.preview.totals.length > 0
            title: qsTr("For all of them, in four weeks")
            rows: page.preview.totals
            note: qsTr("As if each thing is done on its best day and everyone eats: an estimate.")
        }
    }
    bar: ContextBar {
        width: parent.width
        backText: qsTr("Leave it")
        backGlyph: "cross"
        mainText: qsTr("Save")
        mainGlyph: "check"
        busy: page.preview.busy
        busyText: qsTr("Writing it down")
        onBack: page.kit.navigation.backed()
        onMain: page.preview.save()
    }
}
