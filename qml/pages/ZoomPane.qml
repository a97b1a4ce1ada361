import QtQuick
import Burrow.Components
import Burrow.Ports

// Moves what is looked at closely: drag, pinch or wheel, and the same by buttons and keys. A tap
// emits tapped(). The thing itself is the child; `view` names it.
FocusScope {
    id: pane

    required property ZoomView view
    property bool buttons: true

    signal tapped

    function onKey(key: int): bool {
        const step = Tokens.space48;
        switch (key) {
        case Qt.Key_Plus:
            pane.view.closer();
            return true;
        case Qt.Key_Minus:
            pane.view.farther();
            return true;
        case Qt.Key_Left:
            pane.view.shift(step, 0);
            return true;
        case Qt.Key_Right:
            pane.view.shift(-step, 0);
            return true;
        case Qt.Key_Up:
            pane.view.shift(0, step);
            return true;
        case Qt.Key_Down:
            pane.view.shift(0, -step);
            return true;
        default:
            return false;
        }
    }

    Keys.onPressed: event => event.accepted = pane.onKey(event.key)

    TapHandler {
        onTapped: pane.tapped()
    }
    DragHandler {
        id: drag

        property vector2d last

        target: null
        onActiveChanged: drag.last = Qt.vector2d(0, 0)
        onActiveTranslationChanged: {
            if (!drag.active)
                return;
            pane.view.shift(drag.activeTranslation.x - drag.last.x, drag.activeTranslation.y - drag.last.y);
            drag.last = Qt.vector2d(drag.activeTranslation.x, drag.activeTranslation.y);
        }
    }
    PinchHandler {
        id: pinch

        property real from: 1

        target: null
        onActiveChanged: pinch.from = pane.view.zoom
        onActiveScaleChanged: if (pinch.active)
            pane.view.zoomAt(pinch.from * pinch.activeScale, pinch.centroid.position)
    }
    WheelHandler {
        onWheel: event => pane.view.zoomAt(pane.view.zoom * (event.angleDelta.y > 0 ? 1.25 : 0.8), Qt.point(event.x, event.y))
    }
    Row {
        anchors.right: parent.right
        anchors.bottom: parent.bottom
        anchors.margins: Tokens.space12
        z: 1
        visible: pane.buttons
        spacing: Tokens.betweenTargets

        SquareButton {
            glyph: "minus"
            text: qsTr("Smaller")
            enabled: pane.view.canFarther
            onActivated: pane.view.farther()
        }
        SquareButton {
            glyph: "plus"
            text: qsTr("Larger")
            enabled: pane.view.canCloser
            onActivated: pane.view.closer()
        }
    }
}
