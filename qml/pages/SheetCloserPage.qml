import QtQuick
import Burrow.Components
import Burrow.Ports
import Burrow.ViewModels

// A page of a printed sheet as large as the screen.
PageFrame {
    id: page

    required property Kit kit
    required property SheetModel model

    widest: 4096

    ZoomPane {
        anchors.fill: parent
        focus: true
        view: view

        PageView {
            id: view
            objectName: "sheetCloser"
            anchors.fill: parent
            anchors.margins: Tokens.space12
            printer: page.model.printer
            sheet: page.model.sheet
            Accessible.role: Accessible.Graphic
            Accessible.name: page.model.pageText
        }
    }
    bar: ContextBar {
        width: parent.width
        backText: qsTr("Back")
        helperText: qsTr("Whole")
        helperGlyph: "sheet"
        onBack: page.kit.navigation.backed()
        onHelper: view.whole()
    }
}
