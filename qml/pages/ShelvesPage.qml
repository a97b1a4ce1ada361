pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// Everyone, by shelf in the order of a walk, and the way to find one of them.
PageFrame {
    id: page

    required property Kit kit

    readonly property ShelvesModel list: ShelvesModel {
        desk: page.kit.desk
    }
    readonly property ShelfModel shelf: ShelfModel {
        desk: page.kit.desk
    }

    StripList {
        anchors.fill: parent
        objectName: "shelvesList"
        model: page.list
        head: head
        delegate: Column {
            id: entry

            required property var model

            x: page.contentX
            width: page.contentWidth

            KeptHead {
                width: parent.width
                visible: entry.model.heading !== ""
                name: entry.model.heading
                count: entry.model.headingNote
                onActivated: {
                    page.shelf.shelf = entry.model.shelf;
                    sheet.open();
                }
            }
            StripRow {
                width: parent.width
                punch: entry.model.punch
                tag: entry.model.tag
                binomial: entry.model.binomial
                verb: entry.model.verb
                reason: entry.model.reason
                held: entry.model.gone
                onActivated: page.kit.navigation.animal(entry.model.subject)
            }
        }
    }
    ShelvesHead {
        id: head
        x: page.contentX
        width: page.contentWidth
        kit: page.kit
        list: page.list
    }
    WholeShelfSheet {
        id: sheet
        shelf: page.shelf
    }
}
