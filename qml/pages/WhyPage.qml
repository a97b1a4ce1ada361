pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// Why, and why not: how each kind of care stands for one animal, each opening to its working and to the
// rules that were asked.
PageFrame {
    id: page

    required property Kit kit
    required property string subject
    property string care

    readonly property WhyModel why: WhyModel {
        desk: page.kit.desk
        subject: page.subject
        care: page.care
    }

    StripList {
        anchors.fill: parent
        objectName: "whyList"
        model: page.why
        head: head
        delegate: Column {
            id: entry

            required property var model

            x: page.contentX
            width: page.contentWidth
            spacing: Tokens.betweenStrips

            WhyStrip {
                width: parent.width
                name: entry.model.name
                stateWord: entry.model.state
                punch: entry.model.punch
                reason: entry.model.reason
                due: entry.model.due
                held: entry.model.held
                open: entry.model.open
                onActivated: page.why.toggle(entry.model.care)
            }
            WhyWorking {
                width: parent.width
                visible: entry.model.open
                amount: entry.model.amount
                span: entry.model.window
                working: entry.model.working
            }
            Repeater {
                model: entry.model.rules

                RuleStrip {
                    id: rule

                    required property var modelData

                    width: entry.width
                    says: rule.modelData.says
                    value: rule.modelData.value
                    from: rule.modelData.from
                    source: rule.modelData.source
                    own: rule.modelData.own
                    onActivated: page.kit.navigation.pushed("RulePage", {
                        "rule": rule.modelData.rule,
                        "subject": page.subject
                    })
                }
            }
        }
    }
    Column {
        id: head
        x: page.contentX
        width: page.contentWidth
        bottomPadding: Tokens.space8
        spacing: Tokens.space8

        PageHead {
            width: parent.width
            title: qsTr("Why")
            sub: page.why.stage
            trouble: page.kit.desk.trouble
            onDismissed: page.kit.desk.dismissTrouble()
        }
        GoneStrip {
            width: parent.width
            visible: page.why.missing
        }
        LabelHeader {
            width: parent.width
            visible: !page.why.missing
            tag: page.why.tag
            binomial: page.why.binomial
            about: page.why.about
        }
    }
    UndoOverlay {
        anchors.bottom: parent.bottom
        anchors.bottomMargin: Tokens.space12
        x: page.contentX
        width: page.contentWidth
        kit: page.kit
    }
    bar: ContextBar {
        width: parent.width
        backText: qsTr("Back")
        onBack: page.kit.navigation.backed()
    }
}
