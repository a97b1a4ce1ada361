import QtQuick

// A row that opens a choice: `name` over `value` (or `placeholder` while nothing is chosen), with a
// chevron. `bar` marks one that needs a decision, as on a Strip. Emits activated().
PressArea {
    id: row

    required property string name
    property string value
    property string placeholder
    property string sub
    property color bar: "transparent"

    implicitWidth: 380
    implicitHeight: Math.max(Tokens.buttonHeight, words.height + topPadding + bottomPadding)
    leftPadding: Tokens.stripPadding
    rightPadding: Tokens.rowPadding
    topPadding: 10
    bottomPadding: 10
    corner: Tokens.radiusPaper
    Accessible.description: row.sub
    Accessible.name: row.name + ", " + (row.value === "" ? row.placeholder : row.value)

    Item {
        x: row.leftPadding
        y: row.topPadding
        width: row.availableWidth
        height: row.availableHeight

        Column {
            id: words
            anchors.left: parent.left
            anchors.right: mark.left
            anchors.rightMargin: Tokens.space8
            anchors.verticalCenter: parent.verticalCenter

            StepText {
                width: parent.width
                step: Tokens.reason
                color: Tokens.inkSoft
                text: row.name
                Accessible.ignored: true
            }
            StepText {
                width: parent.width
                step: row.value === "" ? Tokens.body : Tokens.bodyStrong
                color: row.value === "" ? Tokens.inkSoft : Tokens.ink
                text: row.value === "" ? row.placeholder : row.value
                Accessible.ignored: true
            }
            StepText {
                width: parent.width
                visible: row.sub !== ""
                step: Tokens.reason
                color: Tokens.inkSoft
                text: row.sub
                Accessible.ignored: true
            }
        }
        Glyph {
            id: mark
            anchors.right: parent.right
            anchors.verticalCenter: parent.verticalCenter
            name: "chevron-down"
            color: Tokens.act
        }
    }
    background: StripGround {
        pressed: row.down
        bar: row.bar
    }
}
