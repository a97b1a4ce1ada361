import QtQuick
import Burrow.Components
import Burrow.Ports

// A moult that waits to be looked at: its photo, whose it is, and how long ago.
PressArea {
    id: row

    required property url thumbnail
    required property string tag
    required property string binomial
    // When, what is known of it, and how many photos there are; and all of the row for a screen reader.
    required property string detail
    required property string spoken
    property bool looked: false

    implicitHeight: Math.max(picture.height, words.height) + 2 * Tokens.rowPadding
    corner: Tokens.radiusPaper
    text: row.tag
    Accessible.name: row.spoken

    PhotoView {
        id: picture
        x: Tokens.rowPadding
        y: Tokens.rowPadding
        width: 84
        height: 84
        source: row.thumbnail
        longestSide: 320
        warm: !Tokens.day
        Accessible.ignored: true
    }
    Column {
        id: words
        anchors.left: picture.right
        anchors.leftMargin: Tokens.space16
        anchors.right: mark.left
        anchors.rightMargin: Tokens.space8
        y: Tokens.rowPadding

        TagText {
            width: parent.width
            text: row.tag
            Accessible.ignored: true
        }
        Latin {
            width: parent.width
            text: row.binomial
            Accessible.ignored: true
        }
        StepText {
            width: parent.width
            step: Tokens.reason
            color: Tokens.inkSoft
            text: row.detail
            Accessible.ignored: true
        }
        StepText {
            id: note
            width: parent.width
            visible: row.looked
            step: Tokens.reason
            color: Tokens.warn
            text: qsTr("Looked at, still open")
            Accessible.ignored: true
        }
    }
    Glyph {
        id: mark
        anchors.right: parent.right
        anchors.rightMargin: Tokens.rowPadding
        anchors.verticalCenter: parent.verticalCenter
        name: "chevron"
        color: Tokens.act
    }
    background: StripGround {
        pressed: row.down
    }
}
