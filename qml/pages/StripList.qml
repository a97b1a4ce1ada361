import QtQuick
import Burrow.Components

// A long list of strips with a `head` that scrolls with them. (A view's own header can't use what its
// page holds, in Qt 6.4.) What the keyboard reaches is brought into view.
ListView {
    id: list

    required property Item head

    // Until it is moved, the view stays at its beginning while the head takes its height.
    property bool moved: false

    function reveal(item: Item) {
        const top = item.mapToItem(list.contentItem, 0, 0).y - Tokens.space12;
        const bottom = top + item.height + 2 * Tokens.space12;
        const least = list.originY - list.topMargin;
        const most = Math.max(least, list.originY + list.contentHeight + list.bottomMargin
                              - list.height);
        if (top < list.contentY)
            list.contentY = Math.max(least, top);
        else if (bottom > list.contentY + list.height)
            list.contentY = Math.min(most, bottom - list.height);
    }
    function settle() {
        if (!list.moved)
            list.contentY = list.originY - list.topMargin;
    }

    spacing: Tokens.betweenStrips
    topMargin: list.head.height
    bottomMargin: Tokens.space48 + Tokens.space48
    boundsBehavior: Flickable.StopAtBounds
    cacheBuffer: Math.max(0, list.height / 2)
    onMovementStarted: list.moved = true
    onTopMarginChanged: list.settle()
    onOriginYChanged: list.settle()
    onHeightChanged: list.settle()

    Binding {
        target: list.head
        property: "parent"
        value: list.contentItem
    }
    Binding {
        target: list.head
        property: "y"
        value: list.originY - list.head.height
    }
    Connections {
        target: list.Window.window
        function onActiveFocusItemChanged() {
            let item = list.Window.window.activeFocusItem;
            const focused = item;
            while (item !== null && item !== list.contentItem)
                item = item.parent;
            if (item === null || focused === list.contentItem)
                return;
            list.moved = true;
            list.reveal(focused);
        }
    }
}
