pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.Ports

// A moult looked at closely, beside an earlier moult of the same animal or one of our drawings. Both panes
// zoom; the contrast switch makes pale folds easier to see, and a tap shows a photo in its own colours.
Rectangle {
    id: page

    required property Kit kit
    // [{url, name}]: of this moult, and of earlier ones
    required property var photos
    required property var earlier
    // [{drawing, name}]
    property var drawings: []
    property int at: 0
    property int beside: 0
    property bool bright: false
    property bool contrast: false

    readonly property var others: page.drawings.concat(page.earlier)
    readonly property bool wide: page.width > page.height
    readonly property var other: page.others[page.beside] ?? null
    readonly property bool isDrawing: page.other !== null && page.other.drawing !== undefined

    color: Tokens.ground

    Flow {
        id: panes

        readonly property bool two: page.other !== null
        readonly property real paneWidth: panes.two && page.wide ? (width - Tokens.space4) / 2 : width
        readonly property real paneHeight: panes.two && !page.wide ? (height - Tokens.space4) / 2 : height

        anchors.top: parent.top
        anchors.topMargin: Tokens.topInset
        anchors.bottom: lower.top
        width: parent.width
        spacing: Tokens.space4

        ZoomPane {
            width: panes.paneWidth
            height: panes.paneHeight
            clip: true
            focus: true
            view: photo
            onTapped: page.bright = !page.bright

            PhotoView {
                id: photo
                objectName: "photo"
                anchors.fill: parent
                source: page.photos[page.at].url
                warm: !Tokens.day && !page.bright
                contrast: page.contrast
                Accessible.role: Accessible.Graphic
                Accessible.name: page.photos[page.at].name
            }
        }
        ZoomPane {
            width: panes.paneWidth
            height: panes.paneHeight
            visible: panes.two && !page.isDrawing
            clip: true
            view: old

            PhotoView {
                id: old
                objectName: "beside"
                anchors.fill: parent
                source: page.other !== null && !page.isDrawing ? page.other.url : ""
                warm: !Tokens.day && !page.bright
                contrast: page.contrast
                Accessible.role: Accessible.Graphic
                Accessible.name: page.other !== null ? page.other.name : ""
            }
        }
        Rectangle {
            width: panes.paneWidth
            height: panes.paneHeight
            visible: panes.two && page.isDrawing
            color: Tokens.strip

            Drawing {
                objectName: "drawing"
                anchors.fill: parent
                anchors.margins: Tokens.space16
                name: page.isDrawing ? page.other.drawing : ""
                description: page.isDrawing ? page.other.name : ""
            }
        }
    }
    Column {
        id: lower
        anchors.bottom: bar.top
        x: Tokens.pageMargin
        width: parent.width - 2 * Tokens.pageMargin
        topPadding: Tokens.space12
        bottomPadding: Tokens.space12
        spacing: Tokens.space8

        StepText {
            width: parent.width
            step: Tokens.reasonStrong
            text: page.photos[page.at].name
        }
        StepText {
            width: parent.width
            visible: page.other !== null
            step: Tokens.reason
            color: Tokens.inkSoft
            text: page.other !== null ? page.other.name : ""
        }
        Row {
            spacing: Tokens.betweenTargets

            SquareButton {
                objectName: "otherPhoto"
                visible: page.photos.length > 1
                glyph: "photo"
                text: qsTr("Next photo of this moult")
                onActivated: page.at = (page.at + 1) % page.photos.length
            }
            SquareButton {
                objectName: "before"
                visible: page.others.length > 1
                glyph: "back"
                text: qsTr("The one before beside it")
                onActivated: page.beside = (page.beside + page.others.length - 1) % page.others.length
            }
            SquareButton {
                objectName: "next"
                visible: page.others.length > 1
                glyph: "chevron"
                text: qsTr("The next one beside it")
                onActivated: page.beside = (page.beside + 1) % page.others.length
            }
        }
    }
    ContextBar {
        id: bar
        anchors.bottom: parent.bottom
        anchors.bottomMargin: Tokens.bottomInset
        width: parent.width
        backText: qsTr("Back")
        mainText: page.contrast ? qsTr("As it is") : qsTr("More contrast")
        mainGlyph: "sun"
        helperText: qsTr("Whole")
        helperGlyph: "image"
        onBack: page.kit.navigation.backed()
        onMain: page.contrast = !page.contrast
        onHelper: {
            photo.whole();
            old.whole();
        }
    }
}
