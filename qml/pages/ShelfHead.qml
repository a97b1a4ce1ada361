import QtQuick
import Burrow.Components

// The head of a shelf in a list: its name, what is due there, and the way to a round along it.
PressArea {
    id: head

    property string name
    property string count

    text: head.name
    Accessible.name: head.count === "" ? qsTr("%1. Start a round here.").arg(head.name)
                                       : qsTr("%1, %2. Start a round here.").arg(head.name).arg(
                                             head.count)
    implicitHeight: Math.max(Tokens.target, contentItem.implicitHeight)

    contentItem: SectionHead {
        name: head.name
        count: head.count
    }
    background: null
}
