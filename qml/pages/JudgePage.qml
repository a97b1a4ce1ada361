pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// Another keeper's question: the photos of a moult, and the answer to give back.
BookPage {
    id: page

    readonly property JudgeModel question: JudgeModel {
        desk: page.kit.desk
        sharer: page.kit.sharer
        settings: page.kit.settings
    }

    title: qsTr("Judge a moult")
    sub: page.question.about
    mainText: !page.question.open ? qsTr("Choose the question") : page.question.canShare ? qsTr("Hand over")
                                                                                        : qsTr("Keep the answer")
    mainGlyph: !page.question.open ? "folder" : page.question.canShare ? "send" : "check"
    mainEnabled: !page.question.open || page.question.complete
    helperText: page.question.open ? qsTr("Closer") : ""
    helperGlyph: "search"
    onMain: {
        if (!page.question.open)
            questions.open();
        else if (page.question.canShare)
            page.question.share();
        else
            chooser.open();
    }
    onHelper: page.kit.navigation.pushed("SexLookPage", {
        "photos": page.question.photos,
        "drawings": page.question.drawings,
        "closeMm": page.question.closeMm
    })
    lower: StepText {
        width: parent.width
        visible: text !== ""
        step: Tokens.reason
        color: Tokens.inkSoft
        text: page.question.missing
    }

    OpinionDone {
        width: parent.width
        doneText: page.question.doneText
        trouble: page.question.trouble
    }
    EmptyStrip {
        width: parent.width
        visible: !page.question.open
        drawing: "line"
        sentence: qsTr("No question is open")
        detail: qsTr("Another keeper's question comes as a file. Nothing of it goes into your book.")
    }
    Repeater {
        model: page.question.photos

        PhotoBox {
            id: box

            required property var modelData

            width: page.contentWidth
            height: Math.round(width * 0.75)
            source: modelData.url
            text: modelData.name
            onActivated: box.bright = true
        }
    }
    MessageStrip {
        width: parent.width
        visible: page.question.asked !== ""
        tone: "ok"
        happened: page.question.asked
    }
    Strip {
        width: parent.width
        visible: page.question.open
        spacing: Tokens.space12

        Heading {
            width: parent.width
            level: 2
            text: qsTr("Inside the abdomen skin")
        }
        ChoiceTiles {
            width: parent.width
            name: qsTr("What it shows")
            options: page.question.choices
            current: page.question.choice
            onChosen: index => page.question.choice = index
        }
        Heading {
            width: parent.width
            level: 2
            text: qsTr("How clearly?")
        }
        CertaintyStops {
            width: parent.width
            name: qsTr("How clearly it is seen")
            words: page.question.clarities
            current: page.question.clarity
            onChosen: index => page.question.clarity = index
        }
        TextLine {
            width: parent.width
            label: qsTr("How you want to be called")
            hint: qsTr("It stands beside your answer in the other book.")
            clearText: qsTr("Empty the name")
            text: page.question.name
            field.maximumLength: 40
            onEdited: page.question.name = text
        }
        TextLine {
            width: parent.width
            label: qsTr("What you want to add, if you like")
            clearText: qsTr("Empty the note")
            text: page.question.note
            field.maximumLength: 500
            onEdited: page.question.note = text
        }
    }
    ActionButton {
        width: parent.width
        visible: page.question.open
        kind: "secondary"
        glyph: "folder"
        text: qsTr("Another question")
        onActivated: questions.open()
    }
    FileChooser {
        id: questions
        title: qsTr("A question about a moult")
        filters: [qsTr("Questions (*.burrowask)"), qsTr("All files (*)")]
        onFilesChosen: files => page.question.read(files[0])
    }
    FileChooser {
        id: chooser
        folders: true
        title: qsTr("Where to keep the answer")
        onFolderChosen: folder => page.question.saveTo(folder)
    }
}
