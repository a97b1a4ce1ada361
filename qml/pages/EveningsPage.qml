pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// The evenings of the coming two weeks: whom to feed on which, in the order of the walk.
PageFrame {
    id: page

    required property Kit kit

    readonly property EveningsModel evenings: EveningsModel {
        desk: page.kit.desk
    }

    StripList {
        anchors.fill: parent
        objectName: "eveningsList"
        model: page.evenings.lines
        head: head
        delegate: Column {
            id: meal

            required property var model

            x: page.contentX
            width: page.contentWidth

            SectionHead {
                width: parent.width
                visible: name !== ""
                name: meal.model.heading
                count: meal.model.note
            }
            LineStrip {
                width: parent.width
                latin: true
                tag: meal.model.tag
                name: meal.model.name
                value: meal.model.value
                sub: meal.model.sub
                estimated: meal.model.estimated
                marked: meal.model.marked
                tappable: true
                onActivated: page.kit.navigation.pushed("AnimalPage", {
                    "subject": meal.model.subject
                })
            }
        }
    }
    Column {
        id: head
        x: page.contentX
        width: page.contentWidth
        spacing: Tokens.betweenStrips

        PageHead {
            width: parent.width
            title: qsTr("Evenings")
            sub: page.evenings.summary
            trouble: page.kit.desk.trouble
            onDismissed: page.kit.desk.dismissTrouble()
        }
        WayRow {
            width: parent.width
            glyph: "calendar"
            text: qsTr("Your feeding days")
            sub: page.evenings.daysText
            endGlyph: "edit"
            onActivated: sheet.open()
        }
        StepText {
            width: parent.width
            bottomPadding: Tokens.space8
            step: Tokens.reason
            color: Tokens.inkSoft
            text: page.evenings.waiting ? qsTr("Being worked out") : qsTr("Everyone's next meal: %1").arg(page.evenings.why)
        }
    }
    UndoOverlay {
        anchors.bottom: parent.bottom
        anchors.bottomMargin: Tokens.space12
        x: page.contentX
        width: page.contentWidth
        kit: page.kit
    }
    EveningDaysSheet {
        id: sheet
        evenings: page.evenings
    }
    bar: ContextBar {
        width: parent.width
        backText: qsTr("Back")
        onBack: page.kit.navigation.backed()
    }
}
