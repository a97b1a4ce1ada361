import QtQuick
import Burrow.Components
import Burrow.ViewModels

// The camera looks for a tag; what it finds opens by itself. A tag can be typed instead.
Rectangle {
    id: page

    required property Kit kit

    readonly property bool inRound: page.kit.round.active
    readonly property bool looking: scan.sight === ScanModel.Nothing

    color: Tokens.ground
    Component.onCompleted: scan.start()
    Component.onDestruction: scan.stop()

    function open(subject: string) {
        if (page.inRound) {
            page.kit.round.goTo(subject);
            page.kit.navigation.replaced("RoundPage", {});
        } else {
            page.kit.navigation.replaced("AnimalPage", {
                "subject": subject
            });
        }
    }

    ScanModel {
        id: scan
        desk: page.kit.desk
        scanner: page.kit.scanner
        onFound: opening.restart()
        onBound: subject => page.open(subject)
    }
    // The tag stands on the screen for a moment before its page opens, so that it can be read.
    Timer {
        id: opening
        interval: Tokens.reducedMotion ? 0 : 350
        onTriggered: page.open(scan.subject)
    }
    Viewfinder {
        anchors.fill: parent
        scanner: page.kit.scanner
    }
    RoundHead {
        x: Tokens.pageMargin
        y: Tokens.space16
        width: parent.width - 2 * Tokens.pageMargin
        visible: page.inRound
        round: page.kit.round
    }
    Column {
        anchors.bottom: panel.top
        anchors.horizontalCenter: parent.horizontalCenter
        anchors.bottomMargin: Tokens.space16
        width: Math.min(parent.width - 2 * Tokens.pageMargin, Tokens.contentWidth)
        spacing: Tokens.betweenStrips

        ScanFound {
            width: parent.width
            visible: scan.sight === ScanModel.Found
            scan: scan
        }
        MessageStrip {
            width: parent.width
            visible: page.looking && scan.cameraTrouble !== ""
            happened: scan.cameraTrouble
        }
        MessageStrip {
            width: parent.width
            visible: scan.sight === ScanModel.Message
            tone: "stop"
            happened: scan.message
            actionText: qsTr("Scan again")
            onActed: scan.clear()
        }
        ScanUnbound {
            width: parent.width
            visible: scan.sight === ScanModel.Unbound
            scan: scan
            onNewWanted: page.kit.navigation.replaced("AnimalFormPage", {
                "tagCode": scan.unboundCode,
                "tagSide": scan.unboundSide
            })
        }
        ScanSeveral {
            width: parent.width
            visible: scan.sight === ScanModel.Several
            scan: scan
        }
    }
    ScanPanel {
        id: panel
        anchors.bottom: parent.bottom
        width: parent.width
        scanner: page.kit.scanner
        offersMoult: !page.inRound
        onTyping: typeSheet.open()
        onMoultWanted: page.kit.navigation.replaced("MoultPage", {
            "subject": ""
        })
        onClosed: page.kit.navigation.backed()
    }
    TypeSheet {
        id: typeSheet
        onTyped: text => scan.typed(text)
    }
}
