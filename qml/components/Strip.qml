import QtQuick

// A paper strip around its content, which stands in a column `spacing` apart; children take
// `width: parent.width`. `bar` (a colour) marks a strip that needs a decision, `held` one on hold.
Item {
    id: strip

    default property alias content: column.data
    property alias spacing: column.spacing
    property alias bar: paper.bar
    property alias held: paper.held
    property real padding: Tokens.rowPadding

    implicitWidth: 380
    implicitHeight: column.height + 2 * strip.padding

    StripGround {
        id: paper
        anchors.fill: parent
    }
    Column {
        id: column
        x: Tokens.stripPadding
        y: strip.padding
        width: strip.width - 2 * Tokens.stripPadding
    }
}
