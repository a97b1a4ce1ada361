import QtQuick
import Burrow.Components
import Burrow.ViewModels

// The label of the tub at hand, with its moult line. Opens the page of the animal.
PressArea {
    id: label

    required property RoundModel round
    // No room for more than who it is.
    property bool small: false

    signal opened

    implicitHeight: contentItem.implicitHeight
    corner: Tokens.radiusPaper
    text: label.round.tag
    Accessible.name: qsTr("%1, %2. %3. Open its page.").arg(label.round.tag).arg(
                         label.round.binomial).arg(label.round.about)
    onActivated: label.opened()

    contentItem: LabelHeader {
        huge: !label.small || Tokens.roundCompact
        punch: label.round.punch
        punchTone: label.round.task === RoundModel.Feed ? Tokens.act : Tokens.ink
        tag: label.round.tag
        cautions: label.round.cautions
        binomial: label.round.binomial
        about: label.small ? "" : label.round.about

        MoultLine {
            width: parent.width
            visible: !label.small
            size: MoultLine.InHeader
            marks: label.round.marks
            feedings: label.round.feedings
            nowDay: label.round.nowDay
            description: label.round.lineText
        }
    }
    background: null
}
