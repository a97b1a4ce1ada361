import QtQuick
import Burrow.Components
import Burrow.ViewModels

// The length with its interval, where the uncertainty comes from, and why there may be none. Emits matWanted().
Column {
    id: result

    required property MeasureModel model

    signal matWanted

    spacing: Tokens.betweenStrips

    MessageStrip {
        width: parent.width
        visible: result.model.refusal !== ""
        happened: qsTr("This photo can't be measured.")
        safe: result.model.refusal
        advice: qsTr("It is kept as it is. A length that you measured yourself can be typed below.")
    }
    Strip {
        width: parent.width
        visible: result.model.hint !== ""

        StepText {
            width: parent.width
            step: Tokens.bodyStrong
            text: result.model.hint
        }
    }
    Strip {
        width: parent.width
        visible: result.model.result !== ""
        spacing: Tokens.space4

        MeasureText {
            width: parent.width
            text: result.model.result
        }
        StepText {
            width: parent.width
            visible: text !== ""
            step: Tokens.bodyStrong
            text: result.model.growth
        }
        StepText {
            width: parent.width
            step: Tokens.reason
            color: Tokens.inkSoft
            text: qsTr("The true length lies between the two in 95 of 100 photos like this. %1").arg(result.model.scaleText)
        }
        StepText {
            width: parent.width
            visible: text !== ""
            topPadding: step.above
            step: Tokens.reason
            color: Tokens.inkSoft
            text: result.model.spanText
        }
    }
    MessageStrip {
        width: parent.width
        visible: result.model.endsTrouble !== ""
        happened: result.model.endsTrouble
    }
    MessageStrip {
        width: parent.width
        visible: result.model.copied !== ""
        happened: qsTr("The mat and the tag on it disagree")
        advice: result.model.copied
    }
    MessageStrip {
        width: parent.width
        visible: result.model.unmeasuredMat !== ""
        happened: qsTr("The bar of this mat was not measured")
        advice: qsTr("Measure it once with a ruler, and every length from its photos gets surer.")
        actionText: qsTr("Write down its bar")
        onActed: result.matWanted()
    }
    LineList {
        width: parent.width
        visible: result.model.sources.length > 0
        title: qsTr("Where the rest comes from")
        rows: result.model.sources
    }
}
