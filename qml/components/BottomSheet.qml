import QtQuick
import QtQuick.Templates as T

// A modal sheet from below: `title`, content that scrolls when it is tall, and a bar with the way
// out (`closeText`) and an optional main action (`mainText`, `mainGlyph`, `mainEnabled`, emits
// main()). open() and close(); a tap on the scrim, Escape and the Back key close it too. The focus
// stays inside and goes back to where it was.
T.Popup {
    id: sheet

    property string title
    required property string closeText
    property string mainText
    property string mainGlyph
    property bool mainEnabled: true
    default property alias content: column.data

    // How far it has come up, 0 to 1.
    property real raised: 1
    property Item cameFrom: null

    signal main

    parent: T.Overlay.overlay
    width: parent ? Math.min(parent.width, 640) : 0
    height: parent ? Math.min(parent.height - Tokens.space48, implicitHeight) : 0
    x: parent ? Math.round((parent.width - width) / 2) : 0
    y: parent ? parent.height - height * sheet.raised : 0
    implicitHeight: head.height + column.height + bar.height + Tokens.space24
                    + Tokens.bottomInset
    padding: 0
    modal: true
    dim: true
    focus: true
    closePolicy: T.Popup.CloseOnEscape | T.Popup.CloseOnPressOutside
    onAboutToShow: sheet.cameFrom = sheet.parent.Window.window.activeFocusItem
    onClosed: if (sheet.cameFrom !== null)
        sheet.cameFrom.forceActiveFocus(Qt.ShortcutFocusReason)

    T.Overlay.modal: Rectangle {
        color: Tokens.scrim
    }
    enter: Transition {
        NumberAnimation {
            property: "raised"
            from: Tokens.reducedMotion ? 1 : 0
            to: 1
            duration: Tokens.sheetTime
            easing.type: Easing.OutCubic
        }
        NumberAnimation {
            property: "opacity"
            from: Tokens.reducedMotion ? 0 : 1
            to: 1
            duration: Tokens.sheetTime
        }
    }
    exit: Transition {
        NumberAnimation {
            property: "raised"
            to: Tokens.reducedMotion ? 1 : 0
            duration: Tokens.sheetTime
            easing.type: Easing.OutCubic
        }
        NumberAnimation {
            property: "opacity"
            to: Tokens.reducedMotion ? 0 : 1
            duration: Tokens.sheetTime
        }
    }
    background: Item {
        clip: true

        Rectangle {
            x: -Tokens.lineControl
            width: parent.width + 2 * Tokens.lineControl
            height: parent.height + Tokens.radiusSlab
            radius: Tokens.radiusSlab
            color: Tokens.raised
            border.width: Tokens.lineControl
            border.color: Tokens.edge
        }
    }
    contentData: FocusScope {
        anchors.fill: parent
        focus: true
        Accessible.role: Accessible.Dialog
        Accessible.name: sheet.title
        Keys.onBackPressed: sheet.close()

        Item {
            id: head
            width: parent.width
            height: sheet.title === "" ? Tokens.space16 : heading.height + Tokens.space24

            Heading {
                id: heading
                x: Tokens.pageMargin
                y: Tokens.space16
                width: parent.width - 2 * Tokens.pageMargin
                visible: sheet.title !== ""
                text: sheet.title
            }
        }
        ScrollArea {
            objectName: "area"
            anchors.top: head.bottom
            anchors.bottom: bar.top
            width: parent.width
            contentHeight: column.height + Tokens.space24

            Column {
                id: column
                x: Tokens.pageMargin
                width: parent.width - 2 * Tokens.pageMargin
                spacing: Tokens.betweenStrips
            }
        }
        ContextBar {
            id: bar
            anchors.bottom: parent.bottom
            anchors.bottomMargin: Tokens.bottomInset
            width: parent.width
            backText: sheet.closeText
            backGlyph: "chevron-down"
            mainText: sheet.mainText
            mainGlyph: sheet.mainGlyph
            mainEnabled: sheet.mainEnabled
            onBack: sheet.close()
            onMain: sheet.main()
        }
    }
}
