import QtQuick
import QtTest
import Burrow.Components

// What every control inherits from PressArea.
Item {
    id: root
    width: 412
    height: 600

    property int count: 0

    Column {
        spacing: 8

        OutcomeButton {
            id: button
            width: 180
            text: "Refused"
            glyph: "cross"
            onActivated: root.count += 1
        }
        ActionButton {
            id: second
            width: 180
            text: "Save moult"
            busyText: "Saving"
            onActivated: root.count += 1
        }
        Slab {
            id: slab
            width: 380
            text: "Took it"
            sub: "then scan the next tub"
            onActivated: root.count += 1
            onHeldDown: root.count += 100
        }
        SquareButton {
            id: less
            glyph: "minus"
            text: "Smaller"
            onActivated: root.count += 1
        }
    }

    TestCase {
        name: "Press"
        when: windowShown

        function init() {
            wait(Tokens.oneTouch + 20);
            root.count = 0;
            Tokens.textScale = 1;
            second.busy = false;
        }

        function test_countsOnReleaseInside_data() {
            return [
                {
                    tag: "outcome",
                    control: button
                },
                {
                    tag: "action",
                    control: second
                },
                {
                    tag: "slab",
                    control: slab
                },
                {
                    tag: "square",
                    control: less
                }
            ];
        }

        function test_countsOnReleaseInside(data) {
            const control = data.control;
            mousePress(control);
            compare(root.count, 0);
            mouseRelease(control);
            compare(root.count, 1);
        }

        function test_releaseOutsideCancels() {
            mousePress(button, 20, 20);
            mouseMove(button, 20, 300);
            mouseRelease(button, 20, 300);
            compare(root.count, 0);
            verify(!button.down);
        }

        function test_leavingAndComingBackCounts() {
            mousePress(button, 20, 20);
            mouseMove(button, 20, 300);
            verify(!button.down);
            mouseMove(button, 20, 20);
            mouseRelease(button, 20, 20);
            compare(root.count, 1);
        }

        function test_touchCounts() {
            const touch = touchEvent(slab);
            touch.press(0, slab, 200, 50).commit();
            verify(slab.down);
            touch.release(0, slab, 200, 50).commit();
            compare(root.count, 1);
        }

        function test_touchReleasedOutsideCancels() {
            const touch = touchEvent(slab);
            touch.press(0, slab, 200, 50).commit();
            touch.move(0, slab, 200, 400).commit();
            touch.release(0, slab, 200, 400).commit();
            compare(root.count, 0);
        }

        function test_twoTouchesWithin250MsCountOnce() {
            mouseClick(button);
            mouseClick(button);
            compare(root.count, 1);
            wait(Tokens.oneTouch + 20);
            mouseClick(button);
            compare(root.count, 2);
        }

        function test_aTouchThatBeginsWithin250MsNeverCounts() {
            mouseClick(button);
            mousePress(button);
            wait(Tokens.oneTouch + 20);
            mouseRelease(button);
            compare(root.count, 1);
        }

        function test_twoControlsCountEach() {
            mouseClick(button);
            mouseClick(second);
            compare(root.count, 2);
        }

        function test_keysPress_data() {
            return [
                {
                    tag: "space",
                    key: Qt.Key_Space
                },
                {
                    tag: "return",
                    key: Qt.Key_Return
                },
                {
                    tag: "enter",
                    key: Qt.Key_Enter
                }
            ];
        }

        function test_keysPress(data) {
            slab.forceActiveFocus();
            keyClick(data.key);
            compare(root.count, 1);
        }

        function test_tabFollowsTheOrderOnScreen() {
            less.forceActiveFocus();
            button.forceActiveFocus(Qt.TabFocusReason);
            verify(button.visualFocus);
            keyClick(Qt.Key_Tab);
            verify(second.activeFocus);
            keyClick(Qt.Key_Tab);
            verify(slab.activeFocus);
            keyClick(Qt.Key_Tab);
            verify(less.activeFocus);
            keyClick(Qt.Key_Backtab);
            verify(slab.activeFocus);
        }

        function test_focusRingShowsForKeysOnly() {
            mouseClick(second);
            verify(second.activeFocus);
            verify(!second.visualFocus);
        }

        function test_busyDoesNotAnswerAndSaysSo() {
            second.busy = true;
            mouseClick(second);
            compare(root.count, 0);
            compare(second.Accessible.name, "Saving");
        }

        function test_holdingTheSlabIsReported() {
            mousePress(slab);
            tryCompare(root, "count", 100);
            mouseRelease(slab);
            compare(root.count, 100);
        }

        function test_slabGrowsWithItsText() {
            compare(slab.implicitHeight, 116);
            Tokens.textScale = 2;
            tryVerify(() => slab.implicitHeight > 116);
        }

        function test_names() {
            compare(slab.Accessible.name, "Took it, then scan the next tub");
            compare(less.Accessible.name, "Smaller");
            compare(button.Accessible.name, "Refused");
        }
    }
}
