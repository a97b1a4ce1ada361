pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// One shelf: everyone on it, a round along it, and what can be done for all of it at once.
PageFrame {
    id: page

    required property Kit kit
    // As the map names it.
    required property string shelf

    readonly property ShelvesModel list: ShelvesModel {
        desk: page.kit.desk
        shelf: page.shelf
        oneShelf: true
    }
    readonly property ShelfModel whole: ShelfModel {
        desk: page.kit.desk
        shelf: page.shelf
    }

    StripList {
        anchors.fill: parent
        objectName: "shelfList"
        model: page.list
        head: head
        delegate: StripRow {
            required property var model

            x: page.contentX
            width: page.contentWidth
            punch: model.punch
            tag: model.tag
            binomial: model.binomial
            verb: model.verb
            reason: model.reason
            held: model.gone
            onActivated: page.kit.navigation.animal(model.subject)
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
            title: page.whole.title
            sub: page.list.tubs
            trouble: page.kit.desk.trouble
            onDismissed: page.kit.desk.dismissTrouble()
        }
        ActionButton {
            width: parent.width
            visible: page.whole.due
            kind: "secondary"
            glyph: "due"
            text: qsTr("Start a round here")
            onActivated: {
                page.kit.round.start(page.whole.title);
                page.kit.navigation.round();
            }
        }
        ActionButton {
            width: parent.width
            visible: page.list.count > 0
            kind: "secondary"
            glyph: "water"
            text: qsTr("Water or dampen all of it")
            onActivated: sheet.open()
        }
        EmptyStrip {
            width: parent.width
            visible: page.list.count === 0
            drawing: "shelf"
            sentence: qsTr("Nobody stands on this shelf now")
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
        helperText: qsTr("Scan")
        onBack: page.kit.navigation.backed()
        onHelper: page.kit.navigation.scan()
    }
    WholeShelfSheet {
        id: sheet
        shelf: page.whole
    }
}
