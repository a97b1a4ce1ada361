import QtQuick

// The head of a group of strips: `name`, a hairline, and `count` at the right ("2 to feed").
// At large text the count goes below the name.
Item {
    id: head

    property string name
    property string count

    readonly property bool stacked: title.implicitWidth + amount.implicitWidth + 60 > head.width

    implicitWidth: 380
    implicitHeight: title.height + (head.stacked && amount.visible ? amount.height : 0) + Tokens.space20
    Accessible.role: Accessible.Heading
    Accessible.name: head.count === "" ? head.name : head.name + ", " + head.count

    StepText {
        id: title
        y: Tokens.space8
        width: head.stacked ? head.width : implicitWidth
        step: Tokens.reasonStrong
        text: head.name
        Accessible.ignored: true
    }
    Hairline {
        anchors.left: title.right
        anchors.leftMargin: Tokens.space12
        anchors.right: amount.visible ? amount.left : parent.right
        anchors.rightMargin: amount.visible ? Tokens.space12 : 0
        anchors.verticalCenter: title.verticalCenter
        visible: !head.stacked
    }
    StepText {
        id: amount
        x: head.stacked ? 0 : head.width - width
        y: head.stacked ? title.y + title.height : title.y
        width: head.stacked ? head.width : implicitWidth
        visible: head.count !== ""
        step: Tokens.reason
        color: Tokens.inkSoft
        text: head.count
        Accessible.ignored: true
    }
}
