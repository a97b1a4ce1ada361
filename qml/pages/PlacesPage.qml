pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// The four places around the scan disc; without a book, the first steps instead.
Item {
    id: page

    required property Kit kit
    property int place: 0

    readonly property bool ready: page.kit.desk.state === Desk.Open

    PlaceLoader {
        anchors.fill: parent
        visible: !page.ready && page.kit.desk.state !== Desk.Opening
        kit: page.kit
        file: "FirstPage"
        wanted: visible
    }
    PlaceLoader {
        anchors.fill: parent
        visible: page.kit.desk.state === Desk.Opening
        kit: page.kit
        file: "OpeningView"
        wanted: late.ran
    }
    // A book that opens within the blink of an eye needs no page that says so.
    Timer {
        id: late

        property bool ran: false

        interval: Tokens.waitBefore
        running: page.kit.desk.state === Desk.Opening
        onTriggered: late.ran = true
    }
    // Each stays as it was left.
    Place {
        file: "DuePage"
        at: 0
        wanted: page.ready
    }
    Place {
        file: "ShelvesPage"
        at: 1
    }
    Place {
        file: "PairingsPage"
        at: 2
    }
    Place {
        file: "StallPage"
        at: 3
    }
    PlaceLoader {
        anchors.bottom: bar.top
        anchors.bottomMargin: Tokens.space32
        anchors.horizontalCenter: parent.horizontalCenter
        width: Math.min(parent.width - 2 * Tokens.pageMargin, Tokens.contentWidth)
        visible: page.ready
        kit: page.kit
        file: "UndoOverlay"
        wanted: page.kit.desk.doneText !== ""
    }
    PlaceBar {
        id: bar
        anchors.bottom: parent.bottom
        width: parent.width
        visible: page.ready
        current: page.place
        scanText: qsTr("Scan")
        places: [
            {
                "word": qsTr("Due"),
                "glyph": "due"
            },
            {
                "word": qsTr("Shelves"),
                "glyph": "shelves"
            },
            {
                "word": qsTr("Pairings"),
                "glyph": "pairings"
            },
            {
                "word": qsTr("Stall"),
                "glyph": "stall"
            }
        ]
        onChosen: index => page.place = index
        onScanned: page.kit.navigation.scan()
    }

    component Place: PlaceLoader {
        required property int at

        anchors.top: page.top
        anchors.bottom: bar.top
        width: page.width
        kit: page.kit
        wanted: page.ready && page.place === at
        visible: page.ready && page.place === at
    }
}
