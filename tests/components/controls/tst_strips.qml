import QtQuick
import QtTest
import Burrow.Components

Item {
    id: root
    width: 412
    height: 1200

    Column {
        width: 380

        MessageStrip {
            id: message
            width: parent.width
            happened: "This file stops halfway."
            safe: "Nothing was changed."
            advice: "Ask for it again."
            actionText: "Choose another file"
        }
        EmptyStrip {
            id: empty
            width: parent.width
            sentence: "Tag your first tub"
            actionText: "Tag an animal"
        }
        WaitStrip {
            id: strip
            width: parent.width
            tag: "302"
            sentence: "302, being read"
            waiting: false
        }
        LabelHeader {
            id: label
            width: parent.width
            tag: "087"
            cautions: ["Fast", "Strong venom"]
            binomial: "Poecilotheria regalis"
        }
    }
    SignalSpy {
        id: acted
        target: message
        signalName: "acted"
    }
    SignalSpy {
        id: started
        target: empty
        signalName: "acted"
    }

    TestCase {
        name: "Strips"
        when: windowShown

        function test_messageSaysAllThree() {
            compare(message.Accessible.role, Accessible.AlertMessage);
            compare(message.Accessible.name,
                    "This file stops halfway. Nothing was changed. Ask for it again.");
            mouseClick(message, 60, message.height - 34);
            compare(acted.count, 1);
        }

        function test_emptyOffersOneAction() {
            mouseClick(empty, 190, empty.height - 40);
            compare(started.count, 1);
        }

        function test_waitShowsItselfOnlyAfterAWhile() {
            verify(!strip.shown);
            strip.waiting = true;
            wait(100);
            verify(!strip.shown);
            tryVerify(() => strip.shown);
            strip.waiting = false;
            verify(!strip.shown);
        }

        function test_themesDoNotMoveAnything() {
            const before = [message.height, empty.height, label.height];
            Tokens.theme = Tokens.Theme.Day;
            compare([message.height, empty.height, label.height], before);
            Tokens.theme = Tokens.Theme.Dim;
        }
    }
}
