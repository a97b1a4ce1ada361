pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// The room: a map of its racks and shelves, or everyone in it by name, and the way to find one of them.
PageFrame {
    id: page

    required property Kit kit
    property bool asList: false

    readonly property ShelvesModel list: ShelvesModel {
        desk: page.kit.desk
    }
    readonly property ShelfMapModel map: ShelfMapModel {
        desk: page.kit.desk
    }
    readonly property FindModel finds: FindModel {
        desk: page.kit.desk
    }
    readonly property ShelfModel shelf: ShelfModel {
        desk: page.kit.desk
    }
    readonly property real below: line.visible ? line.y + line.height + Tokens.space8 : 0

    SearchLine {
        id: line
        x: page.contentX
        y: Tokens.space16
        width: page.contentWidth
        visible: !page.list.blank
        placeholder: qsTr("Number, species, place or note")
        clearText: qsTr("Empty the search")
        text: page.finds.query
        onEdited: page.finds.query = text
    }
    StripList {
        y: page.below
        width: parent.width
        height: parent.height - y
        clip: true
        objectName: "foundList"
        visible: page.finds.searching
        model: page.finds
        head: foundHead
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
    StripList {
        y: page.below
        width: parent.width
        height: parent.height - y
        clip: true
        objectName: "shelfMap"
        visible: !page.finds.searching && !page.asList
        model: page.map
        head: mapHead
        delegate: Column {
            id: place

            required property var model

            x: page.contentX
            width: page.contentWidth

            SectionHead {
                width: parent.width
                visible: place.model.heading !== ""
                name: place.model.heading
            }
            ShelfMapRow {
                width: parent.width
                name: place.model.name
                note: place.model.note
                holes: place.model.holes
                onActivated: page.kit.navigation.pushed("ShelfPage", {
                    "shelf": place.model.shelf
                })
            }
        }
    }
    StripList {
        y: page.below
        width: parent.width
        height: parent.height - y
        clip: true
        objectName: "shelvesList"
        visible: !page.finds.searching && page.asList
        model: page.asList ? page.list : null
        head: listHead
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
    FoundHead {
        id: foundHead
        x: page.contentX
        width: page.contentWidth
        finds: page.finds
    }
    ShelvesHead {
        id: mapHead
        x: page.contentX
        width: page.contentWidth
        kit: page.kit
        list: page.list
        asList: false
        onChosen: asList => page.asList = asList
    }
    ShelvesHead {
        id: listHead
        x: page.contentX
        width: page.contentWidth
        kit: page.kit
        list: page.list
        asList: true
        onChosen: asList => page.asList = asList
    }
    WholeShelfSheet {
        id: sheet
        shelf: page.shelf
    }
}
