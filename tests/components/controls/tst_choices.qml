import QtQuick
import QtTest
import Burrow.Components

Item {
    id: root
    width: 412
    height: 900

    Column {
        width: 380
        spacing: 8

        ChoiceTiles {
            id: tiles
            width: parent.width
            name: "Inside the abdomen skin"
            options: [
                {
                    word: "Plate",
                    sub: "seen"
                },
                {
                    word: "No plate",
                    sub: "seen"
                },
                {
                    word: "Can't",
                    sub: "tell"
                }
            ]
            onChosen: index => tiles.current = index
        }
        CertaintyStops {
            id: stops
            width: parent.width
            name: "How clearly?"
            words: ["Barely", "Partly", "Fairly", "Clearly", "Beyond doubt"]
            onChosen: index => stops.current = index
        }
        SwitchRow {
            id: row
            width: parent.width
            text: "Moult photos"
            sub: "Small size"
            wordOn: "in"
            wordOff: "out"
        }
        PickRow {
            id: pick
            width: parent.width
            name: "Species"
            placeholder: "Choose a species"
        }
        FactRow {
            id: fact
            width: parent.width
            name: "Source"
            value: "Bred at Kiln Row"
            sub: "Sac S-07"
        }
        PreyGauge {
            id: gauge
            width: parent.width
            amount: "1 cricket, 8 mm"
            carapace: 15.8
            prey: 8
            carapaceText: "carapace 15.8"
            preyText: "prey 8, half"
            lessText: "Smaller"
            moreText: "Larger"
        }
    }
    SignalSpy {
        id: chosen
        target: tiles
        signalName: "chosen"
    }
    SignalSpy {
        id: stopped
        target: stops
        signalName: "chosen"
    }
    SignalSpy {
        id: toggled
        target: row
        signalName: "toggled"
    }
    SignalSpy {
        id: picked
        target: pick
        signalName: "activated"
    }
    SignalSpy {
        id: opened
        target: fact
        signalName: "activated"
    }
    SignalSpy {
        id: less
        target: gauge
        signalName: "less"
    }
    SignalSpy {
        id: more
        target: gauge
        signalName: "more"
    }

    TestCase {
        name: "Choices"
        when: windowShown

        function init() {
            wait(Tokens.oneTouch + 20);
            Tokens.textScale = 1;
            tiles.children[0].forceActiveFocus();
            tiles.current = -1;
            stops.current = -1;
            row.on = false;
            fact.tappable = false;
            gauge.canLess = true;
            for (const spy of [chosen, stopped, toggled, picked, opened, less, more])
                spy.clear();
        }

        function test_tilesChooseOne() {
            mouseClick(tiles, 190, 30);
            compare(chosen.count, 1);
            compare(tiles.current, 1);
            mouseClick(tiles, 350, 30);
            compare(tiles.current, 2);
        }

        function test_tilesStackAtLargeText() {
            compare(tiles.columns, 3);
            Tokens.textScale = 1.5;
            compare(tiles.columns, 1);
            tryVerify(() => tiles.height > 200);
            mouseClick(tiles, 350, tiles.height - 20);
            compare(tiles.current, 2);
        }

        function test_tilesMoveByArrows() {
            const first = tiles.children[0];
            first.forceActiveFocus(Qt.TabFocusReason);
            keyClick(Qt.Key_Right);
            keyClick(Qt.Key_Right);
            keyClick(Qt.Key_Right);
            keyClick(Qt.Key_Space);
            compare(tiles.current, 2);
            wait(Tokens.oneTouch + 20);
            keyClick(Qt.Key_Left);
            keyClick(Qt.Key_Return);
            compare(tiles.current, 1);
        }

        function test_tilesSayWhatIsChosen() {
            const first = tiles.children[0];
            compare(first.Accessible.name, "Plate seen");
            compare(first.Accessible.role, Accessible.RadioButton);
            verify(!first.Accessible.checked);
            tiles.current = 0;
            verify(first.Accessible.checked);
        }

        function test_stopsAnswerATap() {
            mouseClick(stops, stops.xOf(3), 24);
            compare(stops.current, 3);
            mouseClick(stops, stops.xOf(0), 24);
            compare(stops.current, 0);
            compare(stopped.count, 2);
        }

        function test_stopsMoveByArrows() {
            stops.current = 2;
            const stop = findChild(stops, "stop 2");
            stop.forceActiveFocus(Qt.TabFocusReason);
            keyClick(Qt.Key_Right);
            compare(stops.current, 3);
            keyClick(Qt.Key_Right);
            keyClick(Qt.Key_Right);
            compare(stops.current, 4);
            keyClick(Qt.Key_Left);
            compare(stops.current, 3);
        }

        function test_switchAsksAndDoesNotTurnItself() {
            mouseClick(row);
            compare(toggled.count, 1);
            compare(toggled.signalArguments[0][0], true);
            compare(row.on, false);
            compare(row.Accessible.name, "Moult photos, out");
            row.on = true;
            compare(row.Accessible.name, "Moult photos, in");
            wait(Tokens.oneTouch + 20);
            row.forceActiveFocus();
            keyClick(Qt.Key_Space);
            compare(toggled.signalArguments[1][0], false);
        }

        function test_pickRowOpens() {
            mouseClick(pick);
            compare(picked.count, 1);
            compare(pick.Accessible.name, "Species, Choose a species");
        }

        function test_factAnswersOnlyWhereItOpens() {
            mouseClick(fact);
            compare(opened.count, 0);
            compare(fact.Accessible.role, Accessible.StaticText);
            fact.tappable = true;
            mouseClick(fact);
            compare(opened.count, 1);
            compare(fact.Accessible.role, Accessible.Button);
        }

        function test_gaugeSteps() {
            mouseClick(gauge, 380 - 14 - 120 + 28, gauge.height / 2);
            compare(less.count, 1);
            mouseClick(gauge, 380 - 14 - 28, gauge.height / 2);
            compare(more.count, 1);
            gauge.canLess = false;
            wait(Tokens.oneTouch + 20);
            mouseClick(gauge, 380 - 14 - 120 + 28, gauge.height / 2);
            compare(less.count, 1);
        }

        function test_gaugeBarsHaveOneScale() {
            verify(gauge.bars);
            fuzzyCompare(gauge.carapace * gauge.perMm, gauge.longest, 0.001);
            gauge.carapace = 0;
            verify(!gauge.bars);
            gauge.carapace = 15.8;
            Tokens.textScale = 1.5;
            verify(!gauge.bars);
        }
    }
}
