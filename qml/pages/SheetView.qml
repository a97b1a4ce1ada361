import QtQuick
import Burrow.Components
import Burrow.Ports
import Burrow.ViewModels

// A printed sheet as it will come out of the printer, page by page. A touch emits closer().
Column {
    id: view

    required property SheetModel model

    signal closer

    spacing: Tokens.space8

    PressArea {
        id: paper
        width: parent.width
        height: Math.round(width * view.model.sheet.shape)
        visible: view.model.pageCount > 0
        corner: Tokens.radiusPaper
        padding: 0
        text: view.model.pageCount > 1 ? qsTr("The sheet, %1. Look closer.").arg(view.model.pageText)
                                       : qsTr("The sheet. Look closer.")
        onActivated: view.closer()

        background: null
        contentItem: PageView {
            objectName: "sheet"
            printer: view.model.printer
            sheet: view.model.sheet
            Accessible.ignored: true
        }
    }
    Item {
        width: parent.width
        height: turn.height
        visible: view.model.pageCount > 1

        Row {
            id: turn
            spacing: Tokens.betweenTargets

            SquareButton {
                id: before
                glyph: "back"
                text: qsTr("The page before")
                enabled: view.model.page > 0
                onActivated: view.model.page -= 1
            }
            SquareButton {
                glyph: "chevron"
                text: qsTr("The next page")
                enabled: view.model.page < view.model.pageCount - 1
                onActivated: view.model.page += 1
            }
        }
        StepText {
            anchors.left: turn.right
            anchors.leftMargin: Tokens.space12
            anchors.right: parent.right
            anchors.verticalCenter: turn.verticalCenter
            step: Tokens.reason
            color: Tokens.inkSoft
            text: view.model.pageText
        }
    }
}
