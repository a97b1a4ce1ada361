pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components

// Lines of facts on a strip: `rows` is [{name, value, sub}], and may say what a line opens. Emits
// opened(page, properties).
Strip {
    id: list

    property string title
    property string headline
    property string note
    required property list<var> rows

    signal opened(string page, var properties)

    StepText {
        width: parent.width
        visible: list.title !== ""
        step: Tokens.reasonStrong
        text: list.title
        bottomPadding: list.headline === "" ? Tokens.space4 : 0
        Accessible.role: Accessible.Heading
    }
    StepText {
        width: parent.width
        visible: list.headline !== ""
        step: Tokens.heading
        text: list.headline
    }
    Repeater {
        id: lines
        model: list.rows

        FactRow {
            required property int index
            required property var modelData

            width: parent.width
            name: modelData.name
            value: modelData.value
            sub: modelData.sub ?? ""
            missing: modelData.missing ?? false
            tappable: (modelData.page ?? "") !== ""
            last: index === lines.count - 1
            onActivated: list.opened(modelData.page, modelData.properties)
        }
    }
    StepText {
        width: parent.width
        visible: list.note !== ""
        topPadding: step.above + Tokens.space4
        step: Tokens.reason
        color: Tokens.inkSoft
        text: list.note
    }
}
