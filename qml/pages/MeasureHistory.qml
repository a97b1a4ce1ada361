import QtQuick
import Burrow.Components
import Burrow.ViewModels

// The same length at the animal's other moults, as steps and as lines. Emits opened(page, properties).
Column {
    id: past

    required property MeasureModel model

    signal opened(string page, var properties)

    spacing: Tokens.betweenStrips

    Strip {
        width: parent.width
        visible: past.model.points.length > 0
        spacing: Tokens.space8

        StripTitle {
            width: parent.width
            name: qsTr("Over its moults")
            note: qsTr("mm")
        }
        StepPlot {
            width: parent.width
            points: past.model.points
            labels: past.model.pointLabels
            nowDay: past.model.nowDay
            description: past.model.pointsText
        }
    }
    LineList {
        width: parent.width
        visible: past.model.history.length > 0
        title: qsTr("On record")
        rows: past.model.history
        onOpened: (page, properties) => past.opened(page, properties)
    }
}
