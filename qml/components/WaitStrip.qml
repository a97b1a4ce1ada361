import QtQuick

// Stands for a strip that is still being read: its outline, with the `tag` already filled. Shows
// itself only after 300 ms of `waiting`. `sentence` is what a screen reader says.
Item {
    id: wait

    property string tag
    property bool waiting: true
    property string sentence
    property bool shown: false

    implicitWidth: 380
    implicitHeight: Math.max(88, tagText.height + 2 * Tokens.rowPadding)
    Accessible.role: Accessible.StaticText
    Accessible.name: wait.sentence
    onWaitingChanged: if (!wait.waiting)
        wait.shown = false

    Timer {
        interval: Tokens.waitBefore
        running: wait.waiting && !wait.shown
        onTriggered: wait.shown = true
    }
    Rectangle {
        anchors.fill: parent
        LayoutMirroring.enabled: Tokens.leftHanded
        LayoutMirroring.childrenInherit: true
        visible: wait.shown
        color: "transparent"
        radius: Tokens.radiusPaper
        border.width: Tokens.lineHairline
        border.color: Tokens.edge

        Punch {
            id: hole
            anchors.left: parent.left
            anchors.leftMargin: Tokens.rowPadding
            y: Math.round(tagText.y + (tagText.height - height) / 2)
            kind: "blank"
        }
        TagText {
            id: tagText
            anchors.left: hole.right
            anchors.leftMargin: Tokens.space12
            y: Tokens.rowPadding
            text: wait.tag
            Accessible.ignored: true
        }
        Rectangle {
            id: rule
            anchors.left: tagText.right
            anchors.leftMargin: Tokens.space8
            y: Tokens.space12
            width: Tokens.lineHairline
            height: parent.height - 2 * Tokens.space12
            color: Tokens.rule
        }
        Column {
            anchors.left: rule.right
            anchors.leftMargin: Tokens.space12
            anchors.right: parent.right
            anchors.rightMargin: Tokens.rowPadding
            y: Tokens.space20
            spacing: Tokens.space12

            Rectangle {
                width: parent.width * 0.7
                height: 12
                radius: Tokens.radiusPaper
                color: Tokens.rule
            }
            Rectangle {
                width: parent.width * 0.95
                height: 8
                radius: Tokens.radiusPaper
                color: Tokens.rule
            }
            Rectangle {
                width: parent.width * 0.4
                height: 8
                radius: Tokens.radiusPaper
                color: Tokens.rule
            }
        }
    }
}
