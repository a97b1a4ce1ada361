import QtQuick
import Burrow.Components

// A line of a list: a tag where it has one, a name, a value and something below it. With `tappable` it opens
// more and emits activated().
PressArea {
    id: row

    property string tag
    required property string name
    property string value
    property string sub
    property bool estimated: false
    property bool marked: false
    property bool tappable: false
    property bool latin: false

    readonly property string spoken: row.told + (row.value === "" ? "" : ", " + row.value)
                                     + (row.sub === "" ? "" : ", " + row.sub)
    readonly property string told: row.tag === "" ? row.name : row.tag + ", " + row.name

    text: row.name
    enabled: row.tappable
    focusPolicy: row.tappable ? Qt.StrongFocus : Qt.NoFocus
    implicitWidth: 380
    implicitHeight: Math.max(Tokens.target, words.height + topPadding + bottomPadding)
    leftPadding: Tokens.stripPadding
    rightPadding: Tokens.rowPadding
    topPadding: Tokens.space12
    bottomPadding: Tokens.space12
    corner: Tokens.radiusPaper
    Accessible.role: row.tappable ? Accessible.Button : Accessible.StaticText
    Accessible.name: row.spoken

    Item {
        x: row.leftPadding
        y: row.topPadding
        width: row.availableWidth
        height: row.availableHeight

        Column {
            id: words
            anchors.left: parent.left
            anchors.right: mark.visible ? mark.left : parent.right
            anchors.rightMargin: mark.visible ? Tokens.space8 : 0
            spacing: 2

            MeasureText {
                width: parent.width
                visible: row.tag !== ""
                text: row.tag
                Accessible.ignored: true
            }
            Latin {
                width: parent.width
                visible: row.latin && row.name !== ""
                text: row.name
                Accessible.ignored: true
            }
            StepText {
                width: parent.width
                visible: !row.latin && row.name !== ""
                step: Tokens.reasonStrong
                text: row.name
                Accessible.ignored: true
            }
            StepText {
                width: parent.width
                visible: row.value !== ""
                step: Tokens.body
                color: row.estimated ? Tokens.est : Tokens.ink
                text: row.value
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
            visible: row.tappable
            name: "chevron"
            color: Tokens.act
        }
    }
    background: StripGround {
        pressed: row.down
        bar: row.marked ? Tokens.warn : "transparent"
    }
}
