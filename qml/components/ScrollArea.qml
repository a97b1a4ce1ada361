import QtQuick

// A plain vertical scroller. Whatever the keyboard reaches inside is brought into view, and a thin
// bar at the right shows where one is while there is more than fits.
Flickable {
    id: area

    function reveal(item: Item) {
        const top = item.mapToItem(area.contentItem, 0, 0).y - Tokens.space12;
        const bottom = top + item.height + 2 * Tokens.space12;
        if (top < area.contentY)
            area.contentY = Math.max(0, top);
        else if (bottom > area.contentY + area.height)
            area.contentY = Math.min(area.contentHeight - area.height, bottom - area.height);
    }

    clip: true
    boundsBehavior: Flickable.StopAtBounds
    flickableDirection: Flickable.VerticalFlick

    Connections {
        target: area.Window.window
        function onActiveFocusItemChanged() {
            let item = area.Window.window.activeFocusItem;
            const focused = item;
            while (item !== null && item !== area.contentItem)
                item = item.parent;
            if (item !== null && focused !== area.contentItem)
                area.reveal(focused);
        }
    }
    Rectangle {
        parent: area
        anchors.right: parent.right
        anchors.rightMargin: 3
        y: area.visibleArea.yPosition * area.height
        width: 3
        height: area.visibleArea.heightRatio * area.height
        radius: 1.5
        color: Tokens.edge
        visible: area.contentHeight > area.height + 1
    }
}
