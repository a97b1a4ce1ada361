import QtQuick
import QtQuick.Layouts

// The two lines under the binomial of a LabelHeader: sex and size, then the next action.
Column {
    id: facts

    required property string about
    required property string size
    required property string punch
    required property string verb
    required property string reason

    topPadding: Tokens.space4

    Hairline {
        width: parent.width
        visible: facts.about !== ""
    }
    Item {
        width: parent.width
        height: sizes.implicitHeight + 13
        visible: facts.about !== ""

        GridLayout {
            id: sizes
            y: 7
            width: parent.width
            columns: about.implicitWidth + measure.implicitWidth + Tokens.space12 > width ? 1 : 2
            columnSpacing: Tokens.space12
            rowSpacing: 0

            StepText {
                id: about
                Layout.fillWidth: true
                step: Tokens.bodyStrong
                text: facts.about
            }
            MeasureText {
                id: measure
                Layout.fillWidth: sizes.columns === 1
                visible: facts.size !== ""
                text: facts.size
            }
        }
    }
    Hairline {
        width: parent.width
        visible: facts.verb !== ""
    }
    Item {
        width: parent.width
        height: next.height + Tokens.space20
        visible: facts.verb !== ""

        Punch {
            y: Math.round(next.y + (Tokens.reason.lineHeight - height) / 2)
            diameter: Math.round(18 * Math.min(1.5, Tokens.factor))
            kind: facts.punch
        }
        ReasonText {
            id: next
            x: Math.round(18 * Math.min(1.5, Tokens.factor)) + 10
            width: parent.width - x
            y: Tokens.space12
            verb: facts.verb
            reason: facts.reason
            reasonColor: Tokens.ink
        }
    }
}
