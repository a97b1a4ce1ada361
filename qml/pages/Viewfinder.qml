pragma ComponentBehavior: Bound
import QtQuick
import QtMultimedia
import Burrow.Components
import Burrow.Ports

// What the camera sees, with brackets around the symbol that is nearest the middle, where they are wanted.
Item {
    id: finder

    required property Scanner scanner
    property bool brackets: true

    readonly property bool painted: GraphicsInfo.api === GraphicsInfo.Software
    property list<point> corners

    clip: true

    FrameView {
        id: frames
        anchors.fill: parent
        visible: finder.painted
    }
    Loader {
        id: video
        anchors.fill: parent
        active: !finder.painted
        sourceComponent: VideoOutput {
            fillMode: VideoOutput.PreserveAspectCrop
        }
    }
    Binding {
        target: finder.scanner
        property: "viewfinder"
        value: finder.painted ? frames : (video.item as VideoOutput)?.videoSink ?? null
    }
    // Red-shifted while it is dim: a bright viewfinder would blind the eyes in the dark room.
    Rectangle {
        anchors.fill: parent
        color: Tokens.faded(Tokens.ground, 0.28)
        visible: !Tokens.day && finder.scanner.state === Scanner.Running
    }
    Connections {
        target: finder.scanner

        function onGlimpsed(corners: list<point>) {
            finder.corners = corners;
        }
        function onLost() {
            finder.corners = [];
        }
    }
    Repeater {
        model: finder.brackets ? finder.corners.length : 0

        Bracket {
            required property int index

            readonly property rect shown: finder.painted ? frames.contentRect
                                                         : (video.item as VideoOutput)?.contentRect ?? Qt.rect(0, 0, 0, 0)
            readonly property point corner: finder.corners[index] ?? Qt.point(0, 0)

            turn: index
            x: shown.x + corner.x * shown.width - width / 2
            y: shown.y + corner.y * shown.height - height / 2
        }
    }

    // One corner of a frame, turned by quarter turns from the top left.
    component Bracket: Item {
        id: bracket

        property int turn: 0

        width: 34
        height: 34
        rotation: 90 * bracket.turn

        Rectangle {
            width: parent.width
            height: 5
            color: Tokens.act
        }
        Rectangle {
            width: 5
            height: parent.height
            color: Tokens.act
        }
    }
}
