pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// Everything that happened to one of them, newest first, by month.
PageFrame {
    id: page

    required property Kit kit
    required property string subject

    readonly property HistoryModel history: HistoryModel {
        desk: page.kit.desk
        subject: page.subject
    }

    StripList {
        anchors.fill: parent
        objectName: "historyList"
        model: page.history
        head: head
        delegate: Column {
            id: entry

            required property var model

            x: page.contentX
            width: page.contentWidth

            SectionHead {
                width: parent.width
                visible: entry.model.month !== ""
                name: entry.model.month
            }
            EntryRow {
                width: parent.width
                day: entry.model.day
                title: entry.model.title
                detail: entry.model.detail
                note: entry.model.note
                glyph: entry.model.glyph
                onActivated: page.kit.navigation.pushed("EntryPage", {
                    "entry": entry.model.entry
                })
            }
        }
    }
    Column {
        id: head
        x: page.contentX
        width: page.contentWidth
        topPadding: Tokens.space16
        bottomPadding: Tokens.space4

        Heading {
            width: parent.width
            text: qsTr("All entries")
        }
        Item {
            width: 1
            height: Tokens.space12
        }
        LabelHeader {
            width: parent.width
            visible: !page.history.missing
            tag: page.history.tag
            binomial: page.history.binomial
        }
        GoneStrip {
            width: parent.width
            visible: page.history.missing
        }
        EmptyStrip {
            width: parent.width
            visible: page.history.ready && !page.history.missing && page.history.count === 0
            drawing: "line"
            sentence: qsTr("Nothing is logged yet")
            detail: qsTr("What happens to it is kept here, newest first.")
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
        onBack: page.kit.navigation.backed()
    }
}
