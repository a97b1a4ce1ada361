import QtQuick
import Burrow.Components

// The head of a shelf where everyone is listed; it opens what can be done for the whole shelf.
PressArea {
    id: head

    property string name
    property string count

    text: head.name
    Accessible.name: qsTr("%1, %2. Water or dampen all of it.").arg(head.name).arg(head.count)
    implicitHeight: Math.max(Tokens.target, contentItem.implicitHeight)

    contentItem: SectionHead {
        name: head.name
        count: head.count
    }
    background: null
}
