import QtQuick
import Burrow.Components
import Burrow.Ports
import Burrow.ViewModels

// One end of a measured line: a ring that is dragged, or moved by 0.1 mm with the arrow keys. Emits touched().
Item {
    id: knob

    required property MeasureModel model
    required property PictureView view
    required property int end
    required property point part
    required property string text

    readonly property bool dragged: drag.active
    // A finger sees what it holds; the ring is for keys, and would hide the place.
    property bool held: false
    // Where it lies in the view.
    readonly property rect content: knob.view.contentRect
    readonly property point place: Qt.point(knob.content.x + knob.part.x * knob.content.width,
                                            knob.content.y + knob.part.y * knob.content.height)

    signal touched

    function onKey(key: int): bool {
        switch (key) {
        case Qt.Key_Left:
            knob.model.nudge(knob.end, -1, 0);
            return true;
        case Qt.Key_Right:
            knob.model.nudge(knob.end, 1, 0);
            return true;
        case Qt.Key_Up:
            knob.model.nudge(knob.end, 0, -1);
            return true;
        case Qt.Key_Down:
            knob.model.nudge(knob.end, 0, 1);
            return true;
        default:
            return false;
        }
    }

    x: knob.place.x - width / 2
    y: knob.place.y - height / 2
    width: Tokens.target
    height: Tokens.target
    visible: knob.model.canMeasure
    activeFocusOnTab: true
    Accessible.role: Accessible.Slider
    Accessible.name: knob.text
    Accessible.description: knob.model.length === "" ? knob.model.hint : qsTr("%1. Arrow keys move it by 0.1 mm").arg(knob.model.length)
    Accessible.onIncreaseAction: knob.model.stretch(knob.end, 1)
    Accessible.onDecreaseAction: knob.model.stretch(knob.end, -1)
    Keys.onPressed: event => event.accepted = knob.onKey(event.key)
    onActiveFocusChanged: {
        if (knob.activeFocus)
            knob.touched();
        else
            knob.held = false;
    }

    Rectangle {
        anchors.centerIn: parent
        width: 26
        height: 26
        radius: width / 2
        color: "transparent"
        border.width: 3
        border.color: Tokens.act

        Rectangle {
            anchors.fill: parent
            anchors.margins: -1.5
            radius: width / 2
            color: "transparent"
            border.width: 1.5
            border.color: Tokens.ground
        }
    }
    FocusRing {
        shown: knob.activeFocus && !knob.held
        corner: width / 2
    }
    DragHandler {
        id: drag

        property point from

        target: null
        dragThreshold: 0
        // The picture below would take it over once it is dragged far enough.
        grabPermissions: PointerHandler.CanTakeOverFromAnything
        onActiveChanged: {
            if (!drag.active)
                return;
            drag.from = knob.place;
            knob.held = true;
            knob.forceActiveFocus(Qt.MouseFocusReason);
            knob.touched();
        }
        onActiveTranslationChanged: if (drag.active)
            knob.model.moveEnd(knob.end, knob.view.partAt(Qt.point(drag.from.x + drag.activeTranslation.x,
                                                                   drag.from.y + drag.activeTranslation.y)))
    }
}
