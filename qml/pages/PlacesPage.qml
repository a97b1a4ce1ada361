import QtQuick
import QtQuick.Layouts
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
    StackLayout {
        anchors.top: parent.top
        anchors.bottom: bar.top
        width: parent.width
        visible: page.ready
        currentIndex: page.place

        PlaceLoader {
            kit: page.kit
            file: "DuePage"
            wanted: page.ready
        }
        PlaceLoader {
            kit: page.kit
            file: "ShelvesPage"
            wanted: page.ready && page.place === 1
        }
        PlaceLoader {
            kit: page.kit
            file: "PairingsPage"
            wanted: page.ready && page.place === 2
        }
        PlaceLoader {
            kit: page.kit
            file: "StallPage"
            wanted: page.ready && page.place === 3
        }
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
}
