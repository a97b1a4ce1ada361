import QtQuick
import QtQuick.Templates as T
import Burrow.Components
import Burrow.Ports
import Burrow.ViewModels

// The window: the four places, and the pages that open over them.
T.ApplicationWindow {
    id: window

    required property Desk desk
    required property Settings settings
    required property Bookcase bookcase
    required property Darkroom darkroom
    required property Printer printer
    required property Sharer sharer
    required property FolderShare share
    required property Reminders reminders
    // Given once the first page is on the screen: waking the camera's machinery takes a while.
    property Scanner scanner: null
    property Photographer photographer: null

    // Photos that another program handed over: of a moult, whose it is shows once a book is open.
    property list<url> photos
    readonly property bool handed: window.photos.length > 0 && window.desk.state === Desk.Open

    readonly property alias kit: kit
    readonly property alias stack: stack

    function openHanded() {
        navigation.pushed("MoultPage", {
            "files": window.photos
        });
        window.photos = [];
    }

    width: 412
    height: 915
    // A book opens while the pages are loaded: the first frame shows what is due, not an empty window.
    visible: window.desk.state !== Desk.Opening || patience.ran
    title: window.desk.roomName === "" ? "Burrowbook" : window.desk.roomName
    color: Tokens.ground

    // A moment later, because taking them changes what this hangs on.
    Timer {
        interval: 0
        running: window.handed
        onTriggered: window.openHanded()
    }

    Timer {
        id: patience

        property bool ran: false

        interval: Tokens.waitBefore
        running: !window.visible
        onTriggered: patience.ran = true
    }
    Look {
        property: "theme"
        value: window.settings.daylight ? Tokens.Theme.Day : Tokens.Theme.Dim
    }
    Look {
        property: "textScale"
        value: window.settings.textScale
    }
    Look {
        property: "reducedMotion"
        value: window.settings.reducedMotion
    }
    Look {
        property: "leftHanded"
        value: window.settings.leftHanded
    }
    RoundModel {
        id: round
        desk: window.desk
    }
    Navigation {
        id: navigation

        function merged(properties: var): var {
            return Object.assign({
                "kit": kit
            }, properties);
        }

        onPushed: (page, properties) => stack.push(Qt.resolvedUrl(page + ".qml"),
                                                  navigation.merged(properties))
        onReplaced: (page, properties) => stack.replace(stack.currentItem,
                                                       Qt.resolvedUrl(page + ".qml"),
                                                       navigation.merged(properties))
        onBacked: stack.pop()
        onHomed: place => {
            stack.pop(null);
            places.place = place;
        }
    }
    Kit {
        id: kit
        desk: window.desk
        settings: window.settings
        bookcase: window.bookcase
        scanner: window.scanner
        photographer: window.photographer
        darkroom: window.darkroom
        printer: window.printer
        sharer: window.sharer
        share: window.share
        reminders: window.reminders
        navigation: navigation
        round: round
    }
    Connections {
        target: window.reminders

        function onDueWanted() {
            navigation.homed(0);
            window.show();
            window.raise();
            window.requestActivate();
        }
    }
    T.StackView {
        id: stack

        readonly property int fade: Tokens.nextTime

        anchors.fill: parent
        focus: true
        initialItem: places
        Keys.onEscapePressed: event => event.accepted = stack.depth > 1 && stack.pop() !== null
        Keys.onBackPressed: event => event.accepted = stack.depth > 1 && stack.pop() !== null

        pushEnter: Fade {
            to: 1
        }
        pushExit: Fade {
            to: 0
        }
        popEnter: Fade {
            to: 1
        }
        popExit: Fade {
            to: 0
        }
        replaceEnter: Fade {
            to: 1
        }
        replaceExit: Fade {
            to: 0
        }
    }
    PlacesPage {
        id: places
        kit: kit
    }

    component Look: Binding {
        target: Tokens
    }
    component Fade: Transition {
        id: fade

        property real to: 1

        NumberAnimation {
            property: "opacity"
            from: 1 - fade.to
            to: fade.to
            duration: Tokens.nextTime
        }
    }
}
