import QtQuick
import QtTest
import Burrow.Components

Item {
    id: root
    width: 412
    height: 600

    PickRow {
        id: opener
        width: 380
        name: "Species"
        placeholder: "Choose a species"
        onActivated: sheet.open()
    }
    BottomSheet {
        id: sheet
        title: "What happened?"
        closeText: "Close"
        mainText: "Log it"

        Repeater {
            id: rows
            model: 3

            PickRow {
                required property int index

                width: parent.width
                name: "Row " + index
                value: "value"
            }
        }
    }
    SignalSpy {
        id: main
        target: sheet
        signalName: "main"
    }

    TestCase {
        name: "Sheet"
        when: windowShown

        function init() {
            rows.model = 3;
            main.clear();
            wait(Tokens.oneTouch + 20);
            opener.forceActiveFocus();
            keyClick(Qt.Key_Return);
            tryVerify(() => sheet.opened);
        }

        function cleanup() {
            sheet.close();
            tryVerify(() => !sheet.visible);
            Tokens.reducedMotion = false;
        }

        function inside(item: Item): bool {
            let up = item;
            while (up !== null && up !== sheet.contentItem)
                up = up.parent;
            return up !== null;
        }

        function test_focusStaysInside() {
            for (let i = 0; i < 12; ++i) {
                keyClick(i % 5 === 4 ? Qt.Key_Backtab : Qt.Key_Tab);
                verify(inside(root.Window.activeFocusItem), "after " + (i + 1) + " tabs");
            }
        }

        function test_focusComesBack() {
            keyClick(Qt.Key_Tab);
            verify(!opener.activeFocus);
            keyClick(Qt.Key_Escape);
            tryVerify(() => !sheet.visible);
            tryVerify(() => opener.activeFocus);
        }

        function test_closes_data() {
            return [
                {
                    tag: "escape",
                    act: () => keyClick(Qt.Key_Escape)
                },
                {
                    tag: "back key",
                    act: () => keyClick(Qt.Key_Back)
                },
                {
                    tag: "scrim",
                    act: () => mouseClick(root, 200, 20)
                },
                {
                    tag: "close",
                    act: () => mouseClick(root, 30, 560)
                }
            ];
        }

        function test_closes(data) {
            data.act();
            tryVerify(() => !sheet.visible);
        }

        function test_behindDoesNotAnswer() {
            const state = opener.down;
            mousePress(root, 200, 20);
            compare(opener.down, state);
            mouseRelease(root, 200, 20);
        }

        function test_mainActs() {
            mouseClick(root, 300, 560);
            compare(main.count, 1);
            verify(sheet.opened);
        }

        function test_standsAtTheBottom() {
            fuzzyCompare(sheet.y + sheet.height, 600, 0.5);
            verify(sheet.height < 600);
        }

        function test_tallContentScrollsToWhatTheKeysReach() {
            rows.model = 20;
            tryVerify(() => sheet.height === 600 - 48);
            const area = findChild(sheet.contentItem, "area");
            compare(area.contentY, 0);
            for (let i = 0; i < 18; ++i)
                keyClick(Qt.Key_Tab);
            tryVerify(() => area.contentY > 400);
            const item = root.Window.activeFocusItem;
            const top = item.mapToItem(area, 0, 0).y;
            verify(top >= 0 && top + item.height <= area.height);
        }

        function test_reducedMotionFades() {
            sheet.close();
            tryVerify(() => !sheet.visible);
            Tokens.reducedMotion = true;
            sheet.open();
            fuzzyCompare(sheet.y + sheet.height, 600, 0.5);
            tryVerify(() => sheet.opened);
            compare(sheet.opacity, 1);
        }
    }
}
