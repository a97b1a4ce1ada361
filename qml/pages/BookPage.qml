import QtQuick
import Burrow.Components

// A page that opens over the places: its content scrolls, what could not be done stands on top, and
// the undo slot floats over a bar with Back, one main action and one helper. Emits main() and helper();
// Back leaves the page unless `backHeld` says that the page answers back() itself.
ScrollPage {
    id: page

    required property Kit kit
    default property alias strips: column.data
    property string mainText
    property string mainGlyph
    property bool mainEnabled: true
    property bool busy: false
    property string helperText
    property string helperGlyph: "scan"
    property bool backHeld: false

    signal back
    signal main
    signal helper

    function goBack() {
        if (page.backHeld)
            page.back();
        else
            page.kit.navigation.backed();
    }

    Keys.onEscapePressed: event => {
        event.accepted = page.backHeld;
        if (page.backHeld)
            page.back();
    }
    Keys.onBackPressed: event => {
        event.accepted = page.backHeld;
        if (page.backHeld)
            page.back();
    }

    TroubleSlot {
        width: parent.width
        trouble: page.kit.desk.trouble
        onDismissed: page.kit.desk.dismissTrouble()
    }
    Column {
        id: column
        width: parent.width
        spacing: Tokens.betweenStrips
    }
    // Room to scroll what lies last out from under the undo slot.
    Item {
        width: parent.width
        height: undo.live ? undo.height : 0
    }
    UndoOverlay {
        id: undo
        parent: page
        x: page.contentX
        y: page.height - contextBar.height - Tokens.bottomInset - Math.max(Tokens.space12, page.lowerHeight)
           - height
        width: page.contentWidth
        kit: page.kit
    }
    bar: ContextBar {
        id: contextBar
        width: parent.width
        backText: qsTr("Back")
        mainText: page.mainText
        mainGlyph: page.mainGlyph
        mainEnabled: page.mainEnabled
        busy: page.busy
        busyText: qsTr("Writing it down")
        helperText: page.helperText
        helperGlyph: page.helperGlyph
        onBack: page.goBack()
        onMain: page.main()
        onHelper: page.helper()
    }
}
