import QtQuick
import QtQuick.Layouts

// A fact on a hairline: `name`, `value` and a smaller `sub`. `estimated` draws the value as such;
// `missing` shows it as not recorded, with a plus. With `tappable` it opens or fills in the fact
// and emits activated(). `last` leaves the hairline out.
PressArea {
    id: row

    property string name
    property string value
    property string sub
    property bool estimated: false
    property bool missing: false
    property bool tappable: row.missing
    property bool last: false

    implicitWidth: 344
    implicitHeight: Math.max(Tokens.target, grid.implicitHeight + topPadding + bottomPadding)
    padding: 0
    topPadding: Tokens.space8
    bottomPadding: Tokens.space8
    corner: Tokens.radiusPaper
    focusPolicy: row.tappable ? Qt.StrongFocus : Qt.NoFocus
    enabled: row.tappable
    Accessible.role: row.tappable ? Accessible.Button : Accessible.StaticText
    Accessible.name: row.name + ", " + row.value + (row.sub === "" ? "" : ", " + row.sub)

    Item {
        x: row.leftPadding
        y: row.topPadding
        width: row.availableWidth
        height: row.availableHeight

        GridLayout {
            id: grid
            anchors.left: parent.left
            anchors.right: mark.visible ? mark.left : parent.right
            anchors.rightMargin: mark.visible ? Tokens.space8 : 0
            columns: Tokens.rowsStack ? 1 : 2
            columnSpacing: Tokens.space12
            rowSpacing: 0

            StepText {
                Layout.alignment: Qt.AlignTop
                Layout.preferredWidth: Tokens.rowsStack ? -1 : 104
                Layout.fillWidth: Tokens.rowsStack
                topPadding: step.above + (Tokens.rowsStack ? 0 : 1)
                step: Tokens.reason
                color: Tokens.inkSoft
                text: row.name
                Accessible.ignored: true
            }
            Column {
                Layout.fillWidth: true
                spacing: 2

                StepText {
                    width: parent.width
                    step: row.missing ? Tokens.body : Tokens.bodyStrong
                    color: row.missing ? Tokens.inkSoft : row.estimated ? Tokens.est : Tokens.ink
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
        }
        Glyph {
            id: mark
            anchors.right: parent.right
            anchors.verticalCenter: parent.verticalCenter
            visible: row.tappable
            name: row.missing ? "plus" : "chevron"
            color: Tokens.act
        }
    }
    background: Rectangle {
        color: row.down ? Tokens.raised : "transparent"

        Hairline {
            anchors.bottom: parent.bottom
            width: parent.width
            visible: !row.last
        }
    }
}
