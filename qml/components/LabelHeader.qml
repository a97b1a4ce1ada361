pragma ComponentBehavior: Bound
import QtQuick
import QtQuick.Layouts

// The label of one animal, group or sac. `punch`, `tag`, at the right `side` (bold) and `place`
// (soft, may hold two lines) or `cautions` (words); under the rule `binomial`, `about` with `size`,
// and the next action as `verb` and `reason` beside `nextPunch`. `huge` is the form at the tub: a
// larger tag, `about` in soft text. Children stand below (the moult line of a round).
Item {
    id: label

    property string punch: "blank"
    property color punchTone: label.punch === "blank" ? Tokens.edge : Tokens.ink
    required property string tag
    property bool huge: false
    property string side
    property string place
    property list<string> cautions
    property string binomial
    property string about
    property string size
    property string nextPunch: "feed"
    property string verb
    property string reason
    default property alias content: below.data

    implicitWidth: 380
    implicitHeight: column.height

    StripGround {
        anchors.fill: parent
    }
    Column {
        id: column
        width: parent.width

        Item {
            width: parent.width
            height: top.implicitHeight + 2 * (label.huge ? 10 : Tokens.space8)

            GridLayout {
                id: top

                readonly property real room: width - tagRow.implicitWidth - Tokens.space4
                readonly property bool stacked: sideColumn.implicitWidth > room

                anchors {
                    left: parent.left
                    right: parent.right
                    leftMargin: Tokens.stripPadding
                    rightMargin: Tokens.space16
                    verticalCenter: parent.verticalCenter
                }
                columns: top.stacked ? 1 : 2
                columnSpacing: Tokens.space4
                rowSpacing: Tokens.space4

                Row {
                    id: tagRow
                    Layout.fillWidth: true
                    spacing: label.huge ? Tokens.space12 : Tokens.space16

                    Punch {
                        anchors.verticalCenter: parent.verticalCenter
                        diameter: label.huge ? 38 : 30
                        kind: label.punch
                        tone: label.punchTone
                    }
                    TagText {
                        size: label.huge ? "huge" : "label"
                        width: Math.min(implicitWidth, top.width - 60)
                        text: label.tag
                    }
                }
                ColumnLayout {
                    id: sideColumn

                    readonly property int align: top.stacked ? Text.AlignLeft : Text.AlignRight

                    Layout.alignment: top.stacked ? Qt.AlignLeft : Qt.AlignRight
                    Layout.maximumWidth: top.width
                    visible: label.side !== "" || label.place !== "" || label.cautions.length > 0
                    spacing: 2

                    StepText {
                        Layout.fillWidth: true
                        visible: label.side !== ""
                        horizontalAlignment: sideColumn.align
                        step: Tokens.reasonStrong
                        text: label.side
                    }
                    StepText {
                        Layout.fillWidth: true
                        visible: label.place !== ""
                        horizontalAlignment: sideColumn.align
                        step: Tokens.reason
                        color: Tokens.inkSoft
                        text: label.place
                    }
                    Repeater {
                        model: label.cautions

                        CautionMark {
                            required property string modelData
                            required property int index

                            Layout.alignment: top.stacked ? Qt.AlignLeft : Qt.AlignRight
                            Layout.topMargin: index > 0 ? Tokens.space4 : 0
                            Layout.fillWidth: implicitWidth > top.width
                            word: modelData
                            plain: index > 0
                        }
                    }
                }
            }
        }
        Rectangle {
            width: parent.width
            height: Tokens.lineControl
            color: Tokens.rule
            visible: label.binomial !== ""
        }
        Column {
            x: Tokens.stripPadding
            width: parent.width - 2 * Tokens.stripPadding
            topPadding: label.binomial === "" ? 0 : Tokens.space8
            bottomPadding: Tokens.space8

            Latin {
                width: parent.width
                visible: label.binomial !== ""
                large: true
                text: label.binomial
            }
            StepText {
                width: parent.width
                visible: label.huge && label.about !== ""
                step: Tokens.reason
                color: Tokens.inkSoft
                text: label.about
            }
            LabelHeaderFacts {
                width: parent.width
                visible: !label.huge
                about: label.about
                size: label.size
                punch: label.nextPunch
                verb: label.verb
                reason: label.reason
            }
            Column {
                id: below
                width: parent.width
                topPadding: children.length > 0 ? Tokens.space8 : 0
            }
        }
    }
}
