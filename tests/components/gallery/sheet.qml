import QtQuick
import Burrow.Components

PageFrame {
    id: page

    readonly property bool ready: sheet.opened

    implicitHeight: 700
    Component.onCompleted: Qt.callLater(sheet.open)

    PickRow {
        x: page.contentX
        y: 40
        width: page.contentWidth
        name: "Behind"
        value: "the sheet"
    }
    BottomSheet {
        id: sheet
        enter: null
        title: "What happened?"
        closeText: "Close"
        mainText: "Log it"
        mainGlyph: "check"

        PickRow {
            width: parent.width
            name: "Prey"
            value: "Cricket, 8 mm"
        }
        PickRow {
            width: parent.width
            name: "When"
            value: "Today"
        }
        TextLine {
            width: parent.width
            label: "Note"
            placeholder: "Anything worth keeping"
        }
    }
}
