import QtQuick
import Burrow.Components
import QtQuick.Templates as T

// A line to type in: `label` above, `hint` or `error` below, `text`, `placeholder`. `code` sets it
// in the face of tags. Emits edited() while typing and accepted() on Enter. `field` is the input
// itself (inputMethodHints, validator, maximumLength).
Column {
    id: line

    property string label
    property string hint
    property string error
    property string placeholder
    property bool code: false
    property string clearText
    property string glyph
    property alias text: input.text
    property alias field: input

    signal edited
    signal accepted

    spacing: Tokens.space4

    StepText {
        width: parent.width
        visible: line.label !== ""
        step: Tokens.label
        color: Tokens.inkSoft
        text: line.label
        Accessible.ignored: true
    }
    T.TextField {
        id: input

        readonly property TypeStep step: line.code ? Tokens.measure : Tokens.body
        readonly property real tallest: Math.max(contentHeight,
                                                 placeholder.visible ? placeholder.height : 0)

        width: parent.width
        implicitHeight: Math.max(Tokens.shelfTarget, input.tallest + topPadding + bottomPadding)
        leftPadding: line.glyph === "" ? Tokens.space16 : Tokens.space24 + Tokens.icon
        rightPadding: Tokens.space16 + (clear.visible ? clear.width : 0)
        topPadding: Tokens.space12
        bottomPadding: Tokens.space12
        font: input.step.font
        color: Tokens.ink
        selectionColor: Tokens.act
        selectedTextColor: Tokens.actInk
        placeholderText: line.placeholder
        verticalAlignment: TextInput.AlignVCenter
        selectByMouse: true
        Accessible.role: Accessible.EditableText
        Accessible.name: line.label === "" ? line.placeholder : line.label
        Accessible.description: line.error === "" ? line.hint : line.error
        onTextEdited: line.edited()
        onAccepted: line.accepted()

        background: Rectangle {
            radius: Tokens.radiusControl
            color: Tokens.well
            border.width: Tokens.lineControl
            border.color: line.error === "" ? Tokens.edge : Tokens.stop

            FocusRing {
                shown: input.activeFocus
            }
            Glyph {
                anchors.verticalCenter: parent.verticalCenter
                x: Tokens.space16
                visible: line.glyph !== ""
                name: line.glyph
                color: Tokens.inkSoft
            }
        }

        StepText {
            id: placeholder
            anchors.verticalCenter: parent.verticalCenter
            x: input.leftPadding
            width: input.width - input.leftPadding - input.rightPadding
            visible: input.length === 0 && input.preeditText === ""
            step: input.step
            color: Tokens.inkSoft
            text: line.placeholder
            Accessible.ignored: true
        }
        ClearButton {
            id: clear
            objectName: "clear"
            anchors.right: parent.right
            anchors.verticalCenter: parent.verticalCenter
            visible: line.clearText !== "" && input.length > 0
            text: line.clearText
            onActivated: {
                input.clear();
                input.forceActiveFocus();
                line.edited();
            }
        }
    }
    StepText {
        width: parent.width
        visible: text !== ""
        step: Tokens.label
        color: line.error === "" ? Tokens.inkSoft : Tokens.stop
        text: line.error === "" ? line.hint : line.error
    }
}
