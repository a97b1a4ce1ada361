import QtQuick
import QtTest
import Burrow.Components

Item {
    id: root
    width: 412
    height: 700

    TextLine {
        id: line
        width: 380
        label: "Tag number"
        hint: "The number under the square"
    }
    SearchLine {
        id: search
        y: 160
        width: 380
        placeholder: "Tag, species or shelf"
        clearText: "Empty the search"
    }
    ReasonText {
        id: reason
        y: 300
        width: 240
        verb: "Feed."
        reason: "Ate 9 days ago, usual gap is 8"
    }
    SignalSpy {
        id: edited
        target: search
        signalName: "edited"
    }
    SignalSpy {
        id: accepted
        target: line
        signalName: "accepted"
    }

    TestCase {
        name: "Text"
        when: windowShown

        function init() {
            line.text = "";
            line.error = "";
            search.text = "";
            edited.clear();
            accepted.clear();
            Tokens.textScale = 1;
            wait(Tokens.oneTouch + 20);
        }

        function test_typing() {
            mouseClick(line.field);
            verify(line.field.activeFocus);
            keyClick(Qt.Key_4);
            keyClick(Qt.Key_2);
            compare(line.text, "42");
            keyClick(Qt.Key_Return);
            compare(accepted.count, 1);
        }

        function test_saysItsLabelAndWhatIsWrong() {
            compare(line.field.Accessible.name, "Tag number");
            compare(line.field.Accessible.description, "The number under the square");
            line.error = "No animal has tag 418. Tag it now, or scan again.";
            compare(line.field.Accessible.description, line.error);
        }

        function test_crossEmptiesTheSearch() {
            const cross = findChild(search, "clear");
            verify(!cross.visible);
            mouseClick(search.field);
            keyClick(Qt.Key_H);
            verify(cross.visible);
            compare(edited.count, 1);
            mouseClick(cross);
            compare(search.text, "");
            compare(edited.count, 2);
            verify(search.field.activeFocus);
        }

        function test_reasonWrapsAndGrows() {
            const one = reason.implicitHeight;
            reason.width = 120;
            tryVerify(() => reason.implicitHeight > one);
            compare(reason.implicitHeight, reason.lineCount * Tokens.reason.lineHeight);
            reason.width = 1000;
            tryCompare(reason, "lineCount", 1);
            reason.width = 240;
        }

        function test_reasonBreaksAWordOnlyWhenALineCannotHoldIt() {
            reason.verb = "Feed.";
            reason.reason = "Donaudampfschifffahrtsgesellschaft";
            reason.width = 60;
            tryVerify(() => reason.lineCount > 3);
            reason.reason = "Ate 9 days ago, usual gap is 8";
            reason.width = 240;
        }
    }
}
