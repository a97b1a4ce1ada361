import QtQuick
import QtQuick.Layouts
import Burrow.Components
import Burrow.ViewModels

// When a moult was found, how large it is, and whether it was a male's last.
Column {
    id: fields

    required property MoultModel model

    spacing: Tokens.betweenStrips

    DayRow {
        width: parent.width
        name: qsTr("Found")
        day: fields.model.when
    }
    MessageStrip {
        width: parent.width
        visible: fields.model.onRecord !== ""
        happened: fields.model.onRecord
    }
    MessageStrip {
        width: parent.width
        visible: fields.model.recent !== ""
        happened: fields.model.recent
        advice: qsTr("Then it is added to that one, and no second moult is logged.")
        actionText: qsTr("Yes, of that one")
        onActed: fields.model.joinRecent()
    }
    Strip {
        width: parent.width
        spacing: Tokens.space12

        Heading {
            width: parent.width
            level: 2
            text: qsTr("Size, where you measured it")
        }
        GridLayout {
            width: parent.width
            columns: Tokens.rowsStack ? 1 : 2
            columnSpacing: Tokens.space12
            rowSpacing: Tokens.space12

            SizeLine {
                label: qsTr("Carapace length, mm")
                text: fields.model.carapace
                error: fields.model.carapaceError
                onEdited: fields.model.carapace = text
            }
            SizeLine {
                label: qsTr("%1, mm").arg(fields.model.spanLabel)
                text: fields.model.span
                error: fields.model.spanError
                onEdited: fields.model.span = text
            }
        }
    }
    SwitchRow {
        width: parent.width
        visible: fields.model.canBeUltimate
        text: qsTr("Ultimate moult")
        sub: qsTr("A male's last: hooks on the front legs, or palpal bulbs.")
        wordOn: qsTr("yes")
        wordOff: qsTr("no")
        on: fields.model.ultimate
        onToggled: on => fields.model.ultimate = on
    }

    component SizeLine: TextLine {
        Layout.fillWidth: true
        Layout.preferredWidth: 1
        Layout.alignment: Qt.AlignTop
        code: true
        field.inputMethodHints: Qt.ImhFormattedNumbersOnly
        field.maximumLength: 12
    }
}
