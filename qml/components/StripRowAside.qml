import QtQuick

// What shows under a StripRow that is drawn aside: the word for what will happen, alight once it was
// drawn `far` enough.
Rectangle {
    id: aside

    property real reach: 0
    property string word
    property bool far: false

    color: Tokens.well
    radius: Tokens.radiusPaper

    StepText {
        anchors.verticalCenter: parent.verticalCenter
        x: aside.reach > 0 ? Tokens.rowPadding : parent.width - width - Tokens.rowPadding
        step: Tokens.action
        color: aside.far ? Tokens.act : Tokens.inkSoft
        text: aside.word
        Accessible.ignored: true
    }
}
