pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.Ports
import Burrow.ViewModels

// The photo with the two ends of what is measured. It is moved and pinched like any picture; an end that is
// dragged shows under a loupe above the finger, or beside it. Arrow keys move the end that has the focus by 0.1 mm, the
// volume keys make the length longer and shorter by as much.
ZoomPane {
    id: pane

    required property MeasureModel model
    property bool bright: false
    // Above the finger, or beside it where there is no room.
    readonly property bool roomAbove: pane.last.place.y >= loupe.height + Tokens.space48 + Tokens.space8
    readonly property bool onTheRight: pane.last.place.x > pane.width / 2
    // The end that was touched last.
    property MeasureEnd last: second

    function whole() {
        view.whole();
    }

    view: view
    onTapped: pane.bright = !pane.bright
    Keys.onVolumeUpPressed: pane.model.stretch(pane.last.end, 1)
    Keys.onVolumeDownPressed: pane.model.stretch(pane.last.end, -1)

    Rectangle {
        anchors.fill: parent
        color: Tokens.well
    }
    PictureView {
        id: view
        objectName: "measured"
        anchors.fill: parent
        picture: pane.model.picture
        warm: !Tokens.day && !pane.bright
        Accessible.role: Accessible.Graphic
        Accessible.name: pane.model.title
    }
    Binding {
        target: pane.model
        property: "screenScale"
        value: view.pixelSize
        when: view.pixelSize > 0
    }
    MeasureLineShape {
        anchors.fill: parent
        visible: pane.model.canMeasure
        from: first.place
        to: second.place
        ink: Tokens.act
        halo: Tokens.ground
    }
    MeasureEnd {
        id: first
        objectName: "firstEnd"
        end: MeasureModel.From
        part: pane.model.from
        text: qsTr("First end")
        model: pane.model
        view: view
        onTouched: pane.last = first
    }
    MeasureEnd {
        id: second
        objectName: "secondEnd"
        end: MeasureModel.To
        part: pane.model.to
        text: qsTr("Second end")
        model: pane.model
        view: view
        onTouched: pane.last = second
    }
    Rectangle {
        anchors.left: parent.left
        anchors.bottom: parent.bottom
        anchors.margins: Tokens.space12
        width: length.width + 2 * Tokens.space12
        height: length.height + 2 * Tokens.space8
        visible: pane.model.length !== ""
        color: Tokens.ground
        radius: Tokens.radiusPaper

        MeasureText {
            id: length
            anchors.centerIn: parent
            text: pane.model.length
        }
    }
    LoupeView {
        id: loupe

        readonly property real beside: pane.onTheRight ? pane.last.place.x - width - Tokens.space48 : pane.last.place.x + Tokens.space48

        objectName: "loupe"
        x: Math.max(Tokens.space8, Math.min(pane.width - width - Tokens.space8, pane.roomAbove ? pane.last.place.x - width / 2 : loupe.beside))
        y: pane.roomAbove ? pane.last.place.y - height - Tokens.space48 : Tokens.space8
        z: 2
        width: 132
        height: 132
        visible: pane.last.dragged
        view: view
        place: pane.last.place
        times: 2
        ground: Tokens.well
        ink: Tokens.act
    }
    StepText {
        anchors.centerIn: parent
        width: parent.width - 2 * Tokens.pageMargin
        visible: pane.model.looking
        horizontalAlignment: Text.AlignHCenter
        step: Tokens.body
        color: Tokens.inkSoft
        text: qsTr("Looking for the mat in the photo")
    }
}
