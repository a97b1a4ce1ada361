pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// Feeders: what is in stock, what will be used in the days to come, and what to buy.
BookPage {
    id: page

    readonly property PreyModel prey: PreyModel {
        desk: page.kit.desk
        onKept: sheet.close()
    }

    function change(size: string) {
        page.prey.choose(size);
        sheet.begin();
    }

    title: qsTr("Prey")
    sub: page.prey.summary

    ChoiceTiles {
        width: parent.width
        name: qsTr("How far ahead")
        options: page.prey.spans
        current: page.prey.span
        onChosen: index => page.prey.span = index
    }
    StepText {
        width: parent.width
        visible: page.prey.outlookText !== ""
        step: Tokens.reason
        color: Tokens.est
        text: page.prey.outlookText
    }
    SectionHead {
        width: parent.width
        name: qsTr("To buy")
        count: page.prey.costText
    }
    StepText {
        width: parent.width
        visible: page.prey.purchases.count === 0
        step: Tokens.body
        color: Tokens.inkSoft
        text: page.prey.waiting ? qsTr("Being worked out") : page.prey.summary
    }
    Repeater {
        model: page.prey.purchases

        PurchaseStrip {
            required property var model

            width: parent?.width ?? 0
            heading: model.heading
            name: model.name
            value: model.value
            sub: model.sub
            marked: model.marked
            onBought: page.prey.buy(model.key)
        }
    }
    SectionHead {
        width: parent.width
        name: qsTr("In stock")
    }
    Repeater {
        model: page.prey.stock

        StockRow {
            required property var model

            width: parent?.width ?? 0
            name: model.name
            count: model.value
            sub: model.sub
            estimated: model.estimated
            onStepped: by => page.prey.step(model.key, by)
            onOpened: page.change(model.key)
        }
    }
    ActionButton {
        width: parent.width
        kind: "secondary"
        glyph: "plus"
        text: page.prey.stock.count === 0 ? qsTr("Count your feeders") : qsTr("Other feeders")
        onActivated: sizes.open()
    }
    SectionHead {
        width: parent.width
        visible: page.prey.uses.count > 0
        name: qsTr("Will be used")
        count: qsTr("in 80 of 100 cases")
    }
    Repeater {
        model: page.prey.uses

        LineStrip {
            required property var model

            width: parent?.width ?? 0
            name: model.name
            value: model.value
            sub: model.sub
            estimated: model.estimated
            tappable: true
            onActivated: page.change(model.key)
        }
    }
    StockSheet {
        id: sheet
        prey: page.prey
    }
    SizesSheet {
        id: sizes
        sizes: page.prey.sizes
        onPicked: size => page.change(size)
    }
}
