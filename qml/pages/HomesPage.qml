pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// The homes of the room: who moves where, one by one, who has outgrown its home or soon will, and what
// stands empty.
PageFrame {
    id: page

    required property Kit kit

    readonly property HomesModel homes: HomesModel {
        desk: page.kit.desk
    }

    StripList {
        anchors.fill: parent
        objectName: "homesList"
        model: page.homes
        head: head
        delegate: Column {
            id: entry

            required property int index
            required property var model

            x: page.contentX
            width: page.contentWidth

            SectionHead {
                width: parent.width
                visible: name !== ""
                name: entry.model.heading
                count: entry.model.count
            }
            HomeStrip {
                width: parent.width
                tag: entry.model.tag
                binomial: entry.model.binomial
                title: entry.model.title
                lines: entry.model.lines
                estimates: entry.model.estimates
                cautions: entry.model.cautions
                verb: entry.model.verb
                urgent: entry.model.urgent
                openText: entry.model.tag === "" ? qsTr("Open %1").arg(entry.model.title) : qsTr("Open %1").arg(entry.model.tag)
                onMade: page.homes.made(entry.index)
                onOpened: {
                    if (entry.model.subject !== "")
                        page.kit.navigation.animal(entry.model.subject);
                    else
                        page.kit.navigation.pushed("EnclosurePage", {
                            "enclosure": entry.model.enclosure
                        });
                }
            }
        }
    }
    PageHead {
        id: head
        x: page.contentX
        width: page.contentWidth
        title: qsTr("Homes")
        sub: page.homes.summary
        trouble: page.kit.desk.trouble
        onDismissed: page.kit.desk.dismissTrouble()

        StepText {
            width: parent.width
            visible: page.homes.unjudged !== ""
            bottomPadding: Tokens.space12
            step: Tokens.reason
            color: Tokens.inkSoft
            text: page.homes.unjudged
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
