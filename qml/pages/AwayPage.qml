pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// The keeper is away: two days to choose, what to do before, what a sitter does, what stays shut, what waits,
// and the sheet for the sitter.
PageFrame {
    id: page

    required property Kit kit

    readonly property AwayModel away: AwayModel {
        desk: page.kit.desk
        printer: page.kit.printer
        sharer: page.kit.sharer
    }

    StripList {
        anchors.fill: parent
        objectName: "awayList"
        model: page.away.lines
        head: head
        delegate: Column {
            id: line

            required property var model

            x: page.contentX
            width: page.contentWidth

            SectionHead {
                width: parent.width
                visible: name !== ""
                name: line.model.heading
                count: line.model.note
            }
            LineStrip {
                width: parent.width
                latin: line.model.tag !== ""
                tag: line.model.tag
                name: line.model.name
                value: line.model.value
                sub: line.model.sub
                estimated: line.model.estimated
                marked: line.model.marked
                tappable: line.model.subject !== ""
                onActivated: page.kit.navigation.pushed("AnimalPage", {
                    "subject": line.model.subject
                })
            }
        }
    }
    AwayHead {
        id: head
        x: page.contentX
        width: page.contentWidth
        kit: page.kit
        away: page.away
        onDaysAsked: days.begin()
        onCallAsked: call.begin()
        onContactAsked: edit.begin()
    }
    UndoOverlay {
        anchors.bottom: parent.bottom
        anchors.bottomMargin: Tokens.space12
        x: page.contentX
        width: page.contentWidth
        kit: page.kit
    }
    AwayDaysSheet {
        id: days
        away: page.away
    }
    SitterCallSheet {
        id: call
        away: page.away
    }
    RoomEditSheet {
        id: edit
        model: RoomModel {
            desk: page.kit.desk
        }
    }
    FileChooser {
        id: chooser
        folders: true
        title: qsTr("Where to save the sheet for the sitter")
        onFolderChosen: folder => page.away.saveTo(folder)
    }
    lower: SheetOutcome {
        width: parent.width
        model: page.away
    }
    bar: ContextBar {
        width: parent.width
        backText: qsTr("Back")
        mainText: qsTr("Save PDF")
        mainGlyph: "print"
        mainEnabled: page.away.pageCount > 0
        busy: page.away.busy
        busyText: qsTr("Writing it down")
        helperText: page.away.canShare ? qsTr("Share") : ""
        helperGlyph: "send"
        onBack: page.kit.navigation.backed()
        onMain: chooser.open()
        onHelper: page.away.share()
    }
}
