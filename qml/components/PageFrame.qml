import QtQuick

// The frame of every page: the ground, a body that fills what is left (children place themselves by
// `contentX` and `contentWidth`), a fixed area `lower` for what is needed at the shelf, and a `bar`
// at the bottom (ContextBar or PlaceBar). Content is centred and at most 600 wide; `wide` says that
// there is room for two columns, `low` that the screen is not tall and the lower area should be
// brief. Children of `lower` and `bar` take `width: parent.width`.
Rectangle {
    id: page

    default property alias body: bodyArea.data
    property alias lower: lowerArea.data
    property alias bar: barArea.data
    property real widest: Tokens.contentWidth

    readonly property bool low: page.height < Tokens.shortBelow
    readonly property bool wide: page.width >= Tokens.wideFrom
    // What the lower area takes, with the space around it.
    readonly property real lowerHeight: lowerArea.used ? lowerArea.height + 2 * Tokens.space12 : 0
    readonly property real contentWidth: Math.min(page.width - 2 * Tokens.pageMargin, page.widest)
    readonly property real contentX: Math.round((page.width - page.contentWidth) / 2)

    implicitWidth: 412
    implicitHeight: 915
    color: Tokens.ground

    Item {
        id: bodyArea
        anchors.top: parent.top
        anchors.topMargin: Tokens.topInset
        anchors.bottom: lowerArea.top
        anchors.bottomMargin: lowerArea.used ? Tokens.space12 : 0
        width: parent.width
        clip: true
    }
    Column {
        id: lowerArea

        readonly property bool used: lowerArea.implicitHeight > 0

        anchors.bottom: barArea.top
        anchors.bottomMargin: lowerArea.used ? Tokens.space12 : 0
        x: page.contentX
        width: page.contentWidth
        spacing: Tokens.space12
    }
    Rectangle {
        anchors.bottom: parent.bottom
        width: parent.width
        height: Tokens.bottomInset
        color: barArea.children.length > 0 ? Tokens.raised : Tokens.ground
    }
    Column {
        id: barArea
        anchors.bottom: parent.bottom
        anchors.bottomMargin: Tokens.bottomInset
        width: parent.width
    }
}
