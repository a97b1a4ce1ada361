import QtQuick
import Burrow.Components
import Burrow.Ports
import Burrow.ViewModels

// At the tub: who it is, what is due and why, and one tap for the likely thing.
PageFrame {
    id: page

    required property Kit kit

    readonly property RoundModel round: page.kit.round
    readonly property bool feeding: page.round.task === RoundModel.Feed
    readonly property bool holding: page.round.task === RoundModel.Hold
    readonly property bool small: Tokens.roundCompact || page.height < 760
    // So little room that the number of the tub comes first and only the one main tap stays below.
    readonly property bool tight: page.low && Tokens.roundCompact
    readonly property bool atTub: page.round.subject !== ""
    readonly property bool scans: page.kit.settings.scanNext && page.kit.scanner?.state !== Scanner.NoCamera

    readonly property string then: page.scans ? qsTr("then scan the next tub") : qsTr("then the next tub")

    function goOn() {
        if (page.scans)
            page.kit.navigation.replaced("ScanPage", {});
        else
            page.round.next();
    }

    Connections {
        target: page.round
        enabled: page.visible

        function onAdvanced() {
            page.goOn();
        }
        function onMoultWanted(subject: string) {
            page.kit.navigation.moult(subject);
        }
        function onNoteWanted() {
            noteSheet.open();
        }
        function onOtherWanted(subject: string) {
            page.kit.navigation.log(subject);
        }
    }
    ScrollArea {
        anchors.fill: parent
        contentHeight: column.y + column.height

        Column {
            id: column
            x: page.contentX
            y: Tokens.space16
            width: page.contentWidth
            spacing: Tokens.space12

            RoundHead {
                width: parent.width
                visible: !page.tight
                round: page.round
                small: page.small
            }
            TroubleSlot {
                width: parent.width
                trouble: page.kit.desk.trouble
                onDismissed: page.kit.desk.dismissTrouble()
            }
            RoundLabel {
                width: parent.width
                visible: page.atTub
                round: page.round
                small: page.small
                onOpened: page.kit.navigation.animal(page.round.subject)
            }
            RoundReason {
                width: parent.width
                round: page.round
                onWhyWanted: page.kit.navigation.pushed("WhyPage", {
                    "subject": page.round.subject,
                    "care": page.feeding || page.holding ? "feed" : ""
                })
            }
            RoundExtras {
                width: parent.width
                visible: page.round.extras.length > 0
                round: page.round
            }
            RoundPrey {
                width: parent.width
                visible: page.feeding && page.tight
                round: page.round
                small: page.small
            }
            RoundOutcomes {
                width: parent.width
                visible: page.atTub && page.tight
                round: page.round
            }
        }
    }
    lower: [
        RoundPrey {
            width: parent.width
            visible: page.feeding && !page.tight
            round: page.round
            small: page.small
        },
        RoundOutcomes {
            width: parent.width
            visible: page.atTub && !page.tight
            round: page.round
        },
        Slab {
            width: parent.width
            text: page.round.mainText
            held: page.holding || page.round.task === RoundModel.Waiting
            sub: !page.atTub ? "" : page.round.alsoText === "" ? page.then
                                                               : page.round.alsoText + ", " + page.then
            onActivated: {
                if (page.atTub) {
                    page.round.doMain();
                } else {
                    page.round.finish();
                    page.kit.navigation.homed(0);
                }
            }
        },
        UndoBar {
            width: parent.width
            tag: page.kit.desk.doneTag
            message: page.kit.desk.doneText
            serial: page.kit.desk.doneSerial
            undoText: qsTr("Undo")
            countdown: qsTr("%1 seconds")
            duration: page.kit.settings.undoTime
            onUndone: page.kit.desk.undo()
            onExpired: page.kit.desk.settle()
        },
        Item {
            width: parent.width
            height: Tokens.space4
        }
    ]
    NoteSheet {
        id: noteSheet
        onWritten: text => page.round.writeNote(text)
    }
}
