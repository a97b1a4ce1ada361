import QtQuick
import QtQuick.Layouts

// The bottom bar of a page: Back at the left, one main action, one helper at the right; mirrored
// for the left hand. `backText`/`backGlyph`, `mainText`/`mainGlyph`, `helperText`/`helperGlyph`;
// leave a text empty to leave the control out. `busy` shows `busyText`. Emits back(), main() and
// helper().
Rectangle {
    id: bar

    property string backText
    property string backGlyph: "back"
    property string mainText
    property string mainGlyph
    property bool mainEnabled: true
    property bool busy: false
    property string busyText
    property string helperText
    property string helperGlyph: "scan"

    signal back
    signal main
    signal helper

    implicitWidth: 412
    implicitHeight: Math.max(Tokens.barHeight, row.implicitHeight + Tokens.space32)
    color: Tokens.raised
    LayoutMirroring.enabled: Tokens.leftHanded
    LayoutMirroring.childrenInherit: true

    Rectangle {
        width: parent.width
        height: Tokens.lineControl
        color: Tokens.barEdge
    }
    RowLayout {
        id: row
        anchors {
            left: parent.left
            right: parent.right
            leftMargin: Tokens.space8
            rightMargin: bar.helperText === "" ? Tokens.pageMargin : Tokens.space8
            verticalCenter: parent.verticalCenter
        }
        spacing: Tokens.betweenTargets

        BarButton {
            Layout.minimumWidth: 60
            visible: bar.backText !== ""
            text: bar.backText
            glyph: bar.backGlyph
            onActivated: bar.back()
        }
        Item {
            Layout.fillWidth: true
            implicitHeight: mainButton.implicitHeight

            ActionButton {
                id: mainButton
                anchors.horizontalCenter: parent.horizontalCenter
                width: Math.min(parent.width, Tokens.contentWidth)
                visible: bar.mainText !== ""
                text: bar.mainText
                glyph: bar.mainGlyph
                busy: bar.busy
                busyText: bar.busyText
                enabled: bar.mainEnabled && !bar.busy
                onActivated: bar.main()
            }
        }
        BarButton {
            Layout.minimumWidth: 60
            visible: bar.helperText !== ""
            text: bar.helperText
            glyph: bar.helperGlyph
            onActivated: bar.helper()
        }
    }
}
