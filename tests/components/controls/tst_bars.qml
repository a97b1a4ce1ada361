import QtQuick
import QtTest
import Burrow.Components

Item {
    id: root
    width: 412
    height: 500

    PlaceBar {
        id: places
        y: 60
        width: parent.width
        scanText: "Scan"
        places: ["Due", "Shelves", "Pairings", "Stall"].map(word => ({
                    word: word,
                    glyph: word.toLowerCase()
                }))
    }
    ContextBar {
        id: context
        y: 260
        width: parent.width
        backText: "Back"
        mainText: "Log for 214"
        mainGlyph: "plus"
        helperText: "Scan"
    }
    SignalSpy {
        id: chosen
        target: places
        signalName: "chosen"
    }
    SignalSpy {
        id: scanned
        target: places
        signalName: "scanned"
    }
    SignalSpy {
        id: back
        target: context
        signalName: "back"
    }
    SignalSpy {
        id: main
        target: context
        signalName: "main"
    }
    SignalSpy {
        id: helper
        target: context
        signalName: "helper"
    }

    TestCase {
        name: "Bars"
        when: windowShown

        function init() {
            wait(Tokens.oneTouch + 20);
            Tokens.leftHanded = false;
            context.busy = false;
            for (const spy of [chosen, scanned, back, main, helper])
                spy.clear();
        }

        function test_everyPlaceAnswers() {
            const pitch = places.pitch;
            for (const [column, index] of [[0, 0], [1, 1], [3, 2], [4, 3]]) {
                mouseClick(places, (column + 0.5) * pitch, 50);
                compare(chosen.signalArguments[chosen.count - 1][0], index);
            }
            compare(chosen.count, 4);
        }

        function test_discReachesAboveTheBar() {
            mouseClick(places, places.width / 2, -10);
            compare(scanned.count, 1);
            compare(chosen.count, 0);
        }

        function test_leftHandMirrors() {
            Tokens.leftHanded = true;
            waitForRendering(root);
            mouseClick(places, places.pitch / 2, 50);
            compare(chosen.signalArguments[0][0], 3);
            mouseClick(context, context.width - 30, 45);
            compare(back.count, 1);
            mouseClick(context, 30, 45);
            compare(helper.count, 1);
            Tokens.leftHanded = false;
            waitForRendering(root);
        }

        function test_activePlaceIsSaid() {
            const first = findChild(places, "place 0");
            compare(first.Accessible.name, "Due");
            verify(first.Accessible.selected);
            verify(!findChild(places, "place 1").Accessible.selected);
        }

        function test_contextBarAnswers() {
            mouseClick(context, 30, 45);
            mouseClick(context, 200, 45);
            mouseClick(context, context.width - 30, 45);
            compare([back.count, main.count, helper.count], [1, 1, 1]);
        }

        function test_busyMainDoesNotAnswer() {
            context.busy = true;
            mouseClick(context, 200, 45);
            compare(main.count, 0);
        }
    }
}
