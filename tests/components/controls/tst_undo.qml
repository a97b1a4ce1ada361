import QtQuick
import QtTest
import Burrow.Components

Item {
    id: root
    width: 412
    height: 200

    UndoBar {
        id: bar
        width: 380
        undoText: "Undo"
        countdown: "%1 seconds to undo"
    }
    SignalSpy {
        id: undone
        target: bar
        signalName: "undone"
    }
    SignalSpy {
        id: expired
        target: bar
        signalName: "expired"
    }

    TestCase {
        name: "Undo"
        when: windowShown

        function init() {
            Tokens.reducedMotion = false;
            bar.message = "";
            bar.tag = "";
            bar.duration = 400;
            undone.clear();
            expired.clear();
            wait(Tokens.oneTouch + 20);
        }

        function log(message: string) {
            bar.tag = "214";
            bar.message = message;
            bar.serial += 1;
        }

        function test_emptyKeepsItsSpace() {
            const height = bar.implicitHeight;
            verify(height >= 60);
            log("took 1 locust");
            compare(bar.implicitHeight, height);
        }

        function test_emptyDoesNotAnswer() {
            tryVerify(() => !bar.children[bar.children.length - 1].visible);
            mouseClick(bar, 340, 30);
            compare(undone.count, 0);
        }

        function test_drainsAndExpiresOnce() {
            log("took 1 locust");
            tryCompare(expired, "count", 1);
            compare(bar.remaining, 0);
            compare(undone.count, 0);
        }

        function test_undoStopsTheDrain() {
            log("took 1 locust");
            mouseClick(bar, 340, 30);
            compare(undone.count, 1);
            wait(bar.duration + 50);
            compare(expired.count, 0);
        }

        function test_aFingerPausesIt_data() {
            return [
                {
                    tag: "on the bar",
                    x: 60
                },
                {
                    tag: "on Undo",
                    x: 340
                }
            ];
        }

        function test_aFingerPausesIt(data) {
            log("took 1 locust");
            tryVerify(() => bar.remaining < 1);
            mousePress(bar, data.x, 30);
            const before = bar.remaining;
            wait(bar.duration + 100);
            fuzzyCompare(bar.remaining, before, 0.05);
            compare(expired.count, 0);
            mouseMove(bar, data.x, 150);
            mouseRelease(bar, data.x, 150);
            tryCompare(expired, "count", 1);
            compare(undone.count, 0);
        }

        function test_aNewEntryStartsAnew() {
            log("took 1 locust");
            tryVerify(() => bar.remaining < 0.7);
            log("refused 1 locust");
            tryVerify(() => bar.remaining > 0.9);
            tryCompare(expired, "count", 1);
        }

        function test_withoutDurationItWaitsForThePage() {
            bar.duration = 0;
            log("took 1 locust");
            wait(100);
            compare(bar.remaining, 1);
            compare(expired.count, 0);
            mouseClick(bar, 340, 30);
            compare(undone.count, 1);
        }

        function test_reducedMotionCountsInWords() {
            Tokens.reducedMotion = true;
            bar.duration = 2000;
            log("took 1 locust");
            const words = findChild(bar, "countdown");
            verify(words.visible);
            compare(words.text, "2 seconds to undo");
            tryCompare(words, "text", "1 seconds to undo");
        }

        function test_keysUndo() {
            log("took 1 locust");
            const undo = findChild(bar, "undo");
            undo.forceActiveFocus(Qt.TabFocusReason);
            keyClick(Qt.Key_Return);
            compare(undone.count, 1);
        }
    }
}
