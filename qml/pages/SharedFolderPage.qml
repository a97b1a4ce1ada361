pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// A folder that several phones share keeps their books alike, whatever carries it from one to the other.
BookPage {
    id: page

    readonly property FolderShare share: page.kit.share
    readonly property bool chosen: page.share.folder !== ""

    title: qsTr("Shared folder")
    sub: page.share.state
    mainText: !page.chosen ? qsTr("Choose a folder") : page.share.visiting ? qsTr("Stop") : qsTr(
                                                                               "Look now")
    mainGlyph: !page.chosen ? "folder" : page.share.visiting ? "cross" : "swap"
    helperText: page.chosen ? qsTr("Another") : ""
    helperGlyph: "folder"
    onMain: {
        if (!page.chosen)
            chooser.open();
        else if (page.share.visiting)
            page.share.work.stop();
        else
            page.share.visit();
    }
    onHelper: chooser.open()

    MessageStrip {
        width: parent.width
        visible: page.share.trouble !== ""
        tone: "stop"
        happened: page.share.trouble
    }
    Strip {
        width: parent.width
        visible: !page.chosen
        spacing: Tokens.space8

        StepText {
            width: parent.width
            step: Tokens.bodyStrong
            text: qsTr("For a room that is kept on several phones")
        }
        StepText {
            width: parent.width
            step: Tokens.reason
            color: Tokens.inkSoft
            text: qsTr("Choose a folder that something else carries between them: a sync app, a network drive, a stick. Each phone writes only files of its own there, and takes in what the others wrote.")
        }
        StepText {
            width: parent.width
            step: Tokens.reason
            color: Tokens.inkSoft
            text: qsTr("Photos go along. Prices, buyers and private notes stay here. Whoever can read the folder can read the rest.")
        }
    }
    Strip {
        width: parent.width
        visible: page.chosen
        spacing: Tokens.space8

        StripTitle {
            width: parent.width
            name: qsTr("The folder")
        }
        StepText {
            objectName: "sharedFolder"
            width: parent.width
            step: Tokens.reason
            color: Tokens.inkSoft
            wrapMode: Text.WrapAnywhere
            text: page.share.folder
        }
        WorkLine {
            width: parent.width
            work: page.share.work
        }
    }
    FactStrip {
        width: parent.width
        facts: page.share.outcome
    }
    Repeater {
        model: page.share.left

        MessageStrip {
            required property var modelData

            width: page.contentWidth
            happened: modelData.name
            advice: modelData.reason
        }
    }
    DifferenceCard {
        width: parent.width
        visible: page.chosen && model.count > 0
        model: DifferencesModel {
            desk: page.kit.desk
        }
    }
    ActionButton {
        width: parent.width
        visible: page.chosen
        kind: "plain"
        glyph: "remove"
        text: qsTr("Share it no longer")
        onActivated: page.share.leave()
    }
    FileChooser {
        id: chooser
        folders: true
        title: qsTr("The folder to share")
        onFolderChosen: folder => page.share.choose(folder)
    }
}
