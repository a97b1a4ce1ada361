pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// The prey to offer; smaller and larger at a tap, kind and count in a sheet.
PreyGauge {
    id: prey

    required property RoundModel round
    // No room for why it is this much.
    property bool small: false

    amount: prey.round.amount
    note: prey.small ? "" : prey.round.amountNote
    carapace: prey.small ? 0 : prey.round.carapace
    prey: prey.round.preyLength
    carapaceText: prey.round.carapaceText
    preyText: prey.round.preyText
    lessText: qsTr("Smaller prey")
    moreText: qsTr("Larger prey")
    openText: qsTr("Other prey or count")
    canLess: prey.round.canLess
    canMore: prey.round.canMore
    onLess: prey.round.less()
    onMore: prey.round.more()
    onOpened: sheet.open()

    BottomSheet {
        id: sheet
        title: qsTr("What is offered")
        closeText: qsTr("Done")

        ChoiceTiles {
            width: parent.width
            name: qsTr("Prey")
            options: prey.round.preyKinds
            current: prey.round.preyKind
            onChosen: index => prey.round.chooseKind(index)
        }
        CountRow {
            width: parent.width
            name: qsTr("How many")
            value: prey.round.preyCount
            onChosen: value => prey.round.chooseCount(value)
        }
    }
}
