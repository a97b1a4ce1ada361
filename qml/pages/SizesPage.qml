pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// Each kind of length over the moults of an animal, and which leg span its carapace promises.
BookPage {
    id: page

    required property string subject

    readonly property SizesModel sizes: SizesModel {
        desk: page.kit.desk
        subject: page.subject
    }

    title: qsTr("Its sizes")

    LabelHeader {
        width: parent.width
        visible: page.sizes.ready
        tag: page.sizes.tag
        binomial: page.sizes.binomial
        about: page.sizes.about
    }
    EmptyStrip {
        width: parent.width
        visible: page.sizes.ready && page.sizes.kinds.length === 0
        drawing: "line"
        sentence: qsTr("Nothing was measured yet")
        detail: qsTr("Measure a moult in its photo, or type its sizes.")
    }
    Repeater {
        model: page.sizes.kinds

        Column {
            id: kind

            required property var modelData

            width: page.contentWidth
            spacing: Tokens.betweenStrips

            Strip {
                width: parent.width
                visible: kind.modelData.points.length > 0
                spacing: Tokens.space8

                StripTitle {
                    width: parent.width
                    name: kind.modelData.name
                    note: qsTr("mm")
                }
                StepPlot {
                    width: parent.width
                    points: kind.modelData.points
                    labels: kind.modelData.labels
                    nowDay: page.sizes.nowDay
                    description: kind.modelData.spoken
                }
            }
            LineList {
                width: parent.width
                title: kind.modelData.name
                rows: kind.modelData.rows
                onOpened: (name, properties) => page.kit.navigation.pushed(name, properties)
            }
        }
    }
    StepText {
        width: parent.width
        visible: text !== ""
        topPadding: step.above + Tokens.space4
        step: Tokens.reason
        color: Tokens.inkSoft
        text: page.sizes.says
    }
}
