import QtQuick
import QtQuick.Templates as T

// What every control is built on. A press counts on release inside (`activated`); two touches
// within 250 ms count once; Space and Enter press it; the focus ring shows for the keyboard only.
// Use `activated`, not `clicked`, which also reports the second touch of a drip. `corner` shapes
// the focus ring.
T.AbstractButton {
    id: area

    property real corner: Tokens.radiusControl
    property bool echoed: false

    signal activated

    implicitWidth: Math.max(Tokens.target, implicitContentWidth + leftPadding + rightPadding)
    implicitHeight: Math.max(Tokens.target, implicitContentHeight + topPadding + bottomPadding)
    focusPolicy: Qt.StrongFocus
    hoverEnabled: false
    Accessible.name: area.text

    onPressed: area.echoed = echo.running
    onClicked: {
        const counts = !area.echoed && !echo.running;
        area.echoed = false;
        if (counts) {
            echo.start();
            area.activated();
        }
    }
    Keys.onReturnPressed: event => {
        if (!event.isAutoRepeat)
            area.clicked();
    }
    Keys.onEnterPressed: event => {
        if (!event.isAutoRepeat)
            area.clicked();
    }

    Timer {
        id: echo
        interval: Tokens.oneTouch
    }
    FocusRing {
        shown: area.visualFocus
        corner: area.corner
    }
}
