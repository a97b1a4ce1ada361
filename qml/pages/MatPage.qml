pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// The mat to print, on which moults are photographed, and what the bars of those printed measure.
BookPage {
    id: page

    // A mat that was seen in a photo, "A5 7Q2M".
    property string asked

    readonly property MatModel mat: MatModel {
        desk: page.kit.desk
        printer: page.kit.printer
        sharer: page.kit.sharer
        asked: page.asked
        onBarKept: bar.close()
    }

    function askForBar() {
        if (page.mat.askedName !== "")
            bar.ask(page.mat.askedName, page.mat.askedTitle);
    }

    title: qsTr("Mat for moults")
    mainText: qsTr("Save PDF")
    mainGlyph: "print"
    mainEnabled: page.mat.pageCount > 0
    busy: page.mat.busy
    helperText: page.mat.canShare ? qsTr("Share") : ""
    helperGlyph: "send"
    onMain: chooser.open()
    onHelper: page.mat.share()
    lower: SheetOutcome {
        width: parent.width
        model: page.mat
    }

    Strip {
        width: parent.width
        spacing: Tokens.space8

        StripTitle {
            width: parent.width
            name: qsTr("Why a mat")
        }
        StepText {
            width: parent.width
            step: Tokens.reason
            text: qsTr("Lay the shed skin on it and take one photo from above. The four squares tell how the phone was held, so lengths come out in millimetres, and photos of later moults compare. Put the animal's own tag into its frame, and the photo is filed by itself.")
        }
        StepText {
            width: parent.width
            step: Tokens.reason
            color: Tokens.inkSoft
            text: qsTr("Print on matt white paper and keep it flat. A crumpled mat measures wrong.")
        }
    }
    Strip {
        width: parent.width
        spacing: Tokens.space8

        StripTitle {
            width: parent.width
            name: qsTr("Paper")
        }
        ChoiceTiles {
            width: parent.width
            name: qsTr("Paper")
            options: [
                {
                    "word": "A5",
                    "sub": qsTr("to 12 cm of legs")
                },
                {
                    "word": "A4",
                    "sub": qsTr("to 18 cm of legs")
                }
            ]
            current: page.mat.paper
            onChosen: index => page.mat.paper = index
        }
    }
    StepText {
        width: parent.width
        topPadding: step.above + Tokens.space4
        bottomPadding: Tokens.space4
        step: Tokens.reason
        color: Tokens.inkSoft
        text: qsTr("Print at full size, not fitted to the page. Then measure the bar once with a ruler and write it down here: printers are off by a percent or two.")
    }
    SectionHead {
        width: parent.width
        visible: page.mat.mats.length > 0
        name: qsTr("Printed mats")
    }
    Repeater {
        model: page.mat.mats

        WayRow {
            required property var modelData

            width: parent?.width ?? 0
            glyph: modelData.measured ? "check" : "ruler"
            text: modelData.title
            sub: modelData.sub
            onActivated: bar.ask(modelData.name, modelData.title)
        }
    }
    SheetView {
        width: parent.width
        model: page.mat
        onCloser: page.kit.navigation.pushed("SheetCloserPage", {
            "model": page.mat
        })
    }
    // The sheet needs the window, in which the page stands only afterwards.
    Timer {
        interval: 0
        running: page.asked !== ""
        onTriggered: page.askForBar()
    }
    FileChooser {
        id: chooser
        folders: true
        title: qsTr("Where to save the mat")
        onFolderChosen: folder => page.mat.saveTo(folder)
    }
    MatBarSheet {
        id: bar
        mat: page.mat
    }
}
