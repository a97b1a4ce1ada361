import QtQuick
import Burrow.Components
import QtQuick.Layouts

// An icon and a word side by side, centred together. Where they do not fit on one line the icon
// goes and the word wraps. The content of buttons.
Item {
    id: label

    required property TypeStep step
    required property string text
    required property color color
    property string glyph

    // Where icon and word do not fit on a line, the word goes first.
    readonly property real iconRoom: label.glyph === "" ? 0 : Tokens.icon + row.spacing
    readonly property real whole: Math.ceil(metrics.advanceWidth) + 1 + label.iconRoom
    readonly property bool wide: label.width >= label.whole - 2

    implicitWidth: label.whole
    // In a bar that is mirrored for the left hand the icon still comes before the word.
    LayoutMirroring.enabled: false
    LayoutMirroring.childrenInherit: true
    implicitHeight: row.implicitHeight

    TextMetrics {
        id: metrics
        font: label.step.font
        text: label.text
    }
    RowLayout {
        id: row
        anchors.centerIn: parent
        width: Math.min(label.whole, label.width)
        spacing: Tokens.space8

        Glyph {
            visible: label.glyph !== "" && label.wide
            name: label.glyph
            color: label.color
        }
        StepText {
            Layout.fillWidth: true
            step: label.step
            text: label.text
            color: label.color
            horizontalAlignment: label.glyph !== "" && label.wide ? Text.AlignLeft
                                                                  : Text.AlignHCenter
            Accessible.ignored: true
        }
    }
}
