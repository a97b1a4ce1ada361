import QtQuick
import Burrow.Components

// The first line of a strip: its name, and at the right a softer note, which goes below where there is
// no room beside it.
Item {
    id: title

    required property string name
    property string note

    readonly property bool stacked: heading.implicitWidth + aside.implicitWidth + Tokens.space12
                                    > title.width

    implicitHeight: title.stacked && title.note !== "" ? aside.y + aside.height : heading.height

    StepText {
        id: heading
        width: parent.width
        step: Tokens.reasonStrong
        text: title.name
        Accessible.role: Accessible.Heading
    }
    StepText {
        id: aside
        y: title.stacked ? heading.height : 0
        width: parent.width
        visible: title.note !== ""
        horizontalAlignment: title.stacked ? Text.AlignLeft : Text.AlignRight
        step: Tokens.reason
        color: Tokens.inkSoft
        text: title.note
    }
}
