pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// What the columns of a spreadsheet stand for. What it leaves open is asked first; below stands what
// becomes of every column.
BookPage {
    id: page

    required property BringModel bring
    required property int file

    readonly property MappingModel mapping: MappingModel {
        bring: page.bring
        file: page.file
    }

    title: page.mapping.name
    sub: page.mapping.summary
    mainText: qsTr("Read it like this")
    mainGlyph: "check"
    mainEnabled: !page.mapping.open
    helperText: qsTr("Save")
    helperGlyph: "folder"
    onMain: {
        page.mapping.finish();
        page.kit.navigation.backed();
    }
    onHelper: chooser.open()
    lower: Column {
        width: parent.width
        spacing: Tokens.betweenStrips

        MessageStrip {
            width: parent.width
            visible: page.mapping.savedText !== ""
            tone: "ok"
            happened: page.mapping.savedText
            safe: qsTr("Choose it together with the next list that looks like this one.")
        }
        MessageStrip {
            width: parent.width
            visible: page.mapping.trouble !== ""
            tone: "stop"
            happened: page.mapping.trouble
        }
    }

    Strip {
        width: parent.width
        spacing: Tokens.space8

        StripTitle {
            width: parent.width
            name: qsTr("A list of")
        }
        ChoiceTiles {
            width: parent.width
            name: qsTr("A list of")
            options: page.mapping.kinds
            current: page.mapping.kind
            onChosen: index => page.mapping.chooseKind(index)
        }
    }
    SectionHead {
        width: parent.width
        visible: page.mapping.questions.length > 0
        name: qsTr("To be said")
    }
    Repeater {
        model: page.mapping.questions

        MappingQuestion {
            id: question

            required property int index

            width: parent.width
            onAnswered: option => page.mapping.answer(question.index, option)
            onChooses: answers.askFor(question.index, question.modelData.text, question.options)
        }
    }
    StepText {
        width: parent.width
        visible: text !== ""
        step: Tokens.reason
        text: page.mapping.moreQuestions
    }
    SectionHead {
        width: parent.width
        name: qsTr("Columns")
    }
    Repeater {
        model: page.mapping.columns

        MappingColumn {
            id: column

            required property int index

            width: parent.width
            onTargetAsked: targets.askFor(column.index, column.modelData.name, page.mapping.targets)
            onOrderAsked: orders.askFor(column.index, column.modelData.name, page.mapping.orders)
            onUnitAsked: units.askFor(column.index, column.modelData.name, page.mapping.units)
        }
    }
    ColumnSheet {
        id: targets
        onPicked: (column, index) => page.mapping.chooseTarget(column, index)
    }
    ColumnSheet {
        id: orders
        onPicked: (column, index) => page.mapping.chooseOrder(column, index)
    }
    ColumnSheet {
        id: units
        onPicked: (column, index) => page.mapping.chooseUnit(column, index)
    }
    ColumnSheet {
        id: answers
        onPicked: (question, index) => page.mapping.answer(question, index)
    }
    FileChooser {
        id: chooser
        folders: true
        title: qsTr("Where to save how the columns are read")
        onFolderChosen: folder => page.mapping.saveTo(folder)
    }
}
