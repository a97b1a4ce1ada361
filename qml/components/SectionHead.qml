import QtQuick
import QtQuick.Layouts

// The head of a group of strips: `name`, a hairline, and `count` at the right ("2 to feed").
// At large text the count goes below the name.
Item {
    id: head

    property string name
    property string count

    implicitWidth: 380
    implicitHeight: grid.implicitHeight + Tokens.space20
    Accessible.role: Accessible.Heading
    Accessible.name: head.count === "" ? head.name : head.name + ", " + head.count

    GridLayout {
        id: grid

        readonly property bool stacked: title.implicitWidth + amount.implicitWidth + 60 > head.width

        anchors.left: parent.left
        anchors.right: parent.right
        anchors.bottom: parent.bottom
        anchors.bottomMargin: Tokens.space12
        columns: grid.stacked ? 1 : 3
        columnSpacing: Tokens.space12
        rowSpacing: 0

        StepText {
            id: title
            Layout.fillWidth: grid.stacked
            step: Tokens.reasonStrong
            text: head.name
            Accessible.ignored: true
        }
        Hairline {
            Layout.fillWidth: true
            visible: !grid.stacked
        }
        StepText {
            id: amount
            Layout.fillWidth: grid.stacked
            step: Tokens.reason
            color: Tokens.inkSoft
            text: head.count
            visible: head.count !== ""
            Accessible.ignored: true
        }
    }
}
