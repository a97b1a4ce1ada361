pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.Ports
import Burrow.ViewModels

// A moult looked at closely, beside an earlier moult of the same animal, another photo of it or one of our
// drawings. Photos that know their scale keep the same one. The contrast switch makes pale folds easier to
// see, and a tap shows a photo in its own colours.
Rectangle {
    id: page

    required property Kit kit
    // [{files, name}]: of this moult, and of earlier ones
    required property var photos
    property var earlier: []
    // [{drawing, name}]
    property var drawings: []
    property int at: 0
    property int earlierAt: -1
    // How many millimetres show the place to look at.
    property real closeMm: 0
    property bool bright: false

    readonly property bool wide: page.width > page.height
    readonly property LookMoultModel look: LookMoultModel {
        desk: page.kit.desk
        darkroom: page.kit.darkroom
        photos: page.photos
        earlier: page.earlier
        drawings: page.drawings
        at: page.at
        earlierAt: page.earlierAt
    }
    readonly property ScaleLink scales: ScaleLink {
        first: photo
        second: old
    }

    color: Tokens.ground

    Flow {
        id: panes

        readonly property bool two: page.look.hasBeside
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

            PictureView {
                id: photo
                objectName: "photo"
                anchors.fill: parent
                key: page.look.key
                picture: page.look.picture
                unit: page.look.unit
                warm: !Tokens.day && !page.bright
                Accessible.role: Accessible.Graphic
                Accessible.name: page.look.name
            }
            ScaleBar {
                anchors.left: parent.left
                anchors.bottom: parent.bottom
                anchors.margins: Tokens.space12
                view: photo
            }
        }
        ZoomPane {
            width: panes.paneWidth
            height: panes.paneHeight
            visible: panes.two && !page.look.isDrawing
            clip: true
            view: old
            onTapped: page.bright = !page.bright

            PictureView {
                id: old
                objectName: "beside"
                anchors.fill: parent
                key: page.look.besideKey
                picture: page.look.besidePicture
                unit: page.look.besideUnit
                warm: !Tokens.day && !page.bright
                Accessible.role: Accessible.Graphic
                Accessible.name: page.look.besideName
            }
            ScaleBar {
                anchors.left: parent.left
                anchors.bottom: parent.bottom
                anchors.margins: Tokens.space12
                view: old
            }
        }
        Rectangle {
            width: panes.paneWidth
            height: panes.paneHeight
            visible: panes.two && page.look.isDrawing
            color: Tokens.strip

            Drawing {
                objectName: "drawing"
                anchors.fill: parent
                anchors.margins: Tokens.space16
                name: page.look.drawing
                description: page.look.isDrawing ? page.look.besideName : ""
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
            text: page.look.name
        }
        StepText {
            width: parent.width
            visible: panes.two
            step: Tokens.reason
            color: Tokens.inkSoft
            text: page.look.besideName
        }
        StepText {
            width: parent.width
            visible: text !== ""
            step: Tokens.reason
            color: page.scales.linked ? Tokens.inkSoft : Tokens.warn
            text: page.look.scaleText
        }
        StepText {
            width: parent.width
            visible: text !== ""
            step: Tokens.reason
            color: Tokens.warn
            text: page.look.trouble
        }
        Row {
            spacing: Tokens.betweenTargets

            SquareButton {
                objectName: "otherPhoto"
                visible: page.look.severalPhotos
                glyph: "photo"
                text: qsTr("Next photo of this moult")
                onActivated: page.look.nextPhoto()
            }
            SquareButton {
                objectName: "before"
                visible: page.look.severalBeside
                glyph: "back"
                text: qsTr("The one before beside it")
                onActivated: page.look.before()
            }
            SquareButton {
                objectName: "next"
                visible: page.look.severalBeside
                glyph: "chevron"
                text: qsTr("The next one beside it")
                onActivated: page.look.next()
            }
            SquareButton {
                objectName: "closeUp"
                visible: photo.perMm > 0
                glyph: "search"
                text: qsTr("Close up")
                onActivated: photo.showMm(page.closeMm)
            }
        }
    }
    ContextBar {
        id: bar
        anchors.bottom: parent.bottom
        anchors.bottomMargin: Tokens.bottomInset
        width: parent.width
        backText: qsTr("Back")
        mainText: page.look.contrast ? qsTr("As it is") : qsTr("More contrast")
        mainGlyph: "sun"
        helperText: qsTr("Whole")
        helperGlyph: "image"
        onBack: page.kit.navigation.backed()
        onMain: page.look.contrast = !page.look.contrast
        onHelper: page.scales.whole()
    }
}
