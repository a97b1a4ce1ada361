import QtQuick
import QtTest
import Burrow.Components

Item {
    id: root
    width: 412
    height: 700

    ListView {
        id: list
        width: parent.width
        height: 400
        spacing: 4
        model: 30
        delegate: StripRow {
            required property int index

            objectName: "row " + index
            width: 380
            tag: String(100 + index)
            binomial: "Brachypelma hamorii"
            verb: "Feed."
            reason: "Ate 9 days ago, usual gap is 8"
            rightWord: "Took it"
            leftWord: "More"
            onActivated: root.log.push(tag + " tapped")
            onSwipedRight: root.log.push(tag + " right")
            onSwipedLeft: root.log.push(tag + " left")
        }
    }
    StripRow {
        id: plain
        y: 420
        width: 380
        tag: "087"
        binomial: "Poecilotheria regalis"
        verb: "Feed."
        reason: "Refused twice, offer something smaller"
        line.marks: [
            {
                day: 10,
                height: 5
            }
        ]
        line.nowDay: 100
        onActivated: root.log.push("plain tapped")
        onSwipedRight: root.log.push("plain right")
    }
    property var log: []

    TestCase {
        name: "Rows"
        when: windowShown

        function init() {
            wait(Tokens.oneTouch + 20);
            root.log = [];
            Tokens.textScale = 1;
            Tokens.leftHanded = false;
            list.contentY = 0;
        }

        function drag(row: Item, dx: int, dy: int) {
            mousePress(row, 200, 40);
            for (let step = 1; step <= 8; ++step)
                mouseMove(row, 200 + dx * step / 8, 40 + dy * step / 8);
            mouseRelease(row, 200 + dx, 40 + dy);
        }

        function test_tap() {
            mouseClick(findChild(list, "row 1"), 200, 40);
            compare(root.log, ["101 tapped"]);
        }

        function test_swipes() {
            drag(findChild(list, "row 0"), 150, 0);
            drag(findChild(list, "row 1"), -150, 0);
            compare(root.log, ["100 right", "101 left"]);
        }

        function test_aShortSwipeDoesNothing() {
            drag(findChild(list, "row 0"), 60, 0);
            compare(root.log, []);
        }

        function test_aSwipeTakenBackDoesNothing() {
            const row = findChild(list, "row 0");
            mousePress(row, 200, 40);
            for (const x of [220, 260, 320, 340, 300, 240, 210])
                mouseMove(row, x, 40);
            mouseRelease(row, 210, 40);
            compare(root.log, []);
        }

        function test_scrollingIsNoTap() {
            drag(findChild(list, "row 2"), 0, -150);
            verify(list.contentY > 0);
            compare(root.log, []);
        }

        function test_rowsWithoutWordsDoNotSwipe() {
            drag(plain, 150, 0);
            verify(root.log.indexOf("plain right") < 0);
        }

        function test_readsAsOneSentence() {
            const name = findChild(plain, "press").Accessible.name;
            compare(name, "087, Poecilotheria regalis. "
                    + "Feed. Refused twice, offer something smaller");
        }

        function test_stacksFrom13() {
            const before = plain.implicitHeight;
            Tokens.textScale = 1.3;
            tryVerify(() => plain.implicitHeight > before + 40);
        }

        function test_binomialsWrapAndAreNeverCut() {
            Tokens.textScale = 2;
            plain.width = 300;
            plain.binomial = "Ornithoctoninae species of a long name";
            const latin = findChild(plain, "binomial");
            tryVerify(() => latin.lineCount > 1);
            verify(!latin.truncated);
            plain.width = 380;
            plain.binomial = "Poecilotheria regalis";
        }

        function test_smallLineGoesBeforeTheNameWraps() {
            tryVerify(() => plain.line.visible);
            plain.width = 300;
            tryVerify(() => !plain.line.visible);
            compare(findChild(plain, "binomial").lineCount, 1);
            plain.width = 380;
        }
    }
}
