import QtQuick

// A page whose content scrolls above its fixed lower area and bar (see PageFrame for `lower`,
// `bar`, `wide`, `contentWidth`). `title` and `sub` head the content; the content's children take
// `width: parent.width` and stand `spacing` apart.
PageFrame {
    id: page

    property string title
    property string sub
    property alias spacing: column.spacing
    property alias contentY: area.contentY
    default property alias content: column.data

    ScrollArea {
        id: area
        anchors.fill: parent
        contentHeight: column.y + column.height + Tokens.space24

        StepText {
            id: heading
            x: page.contentX
            y: Tokens.space16
            width: page.contentWidth
            visible: page.title !== ""
            step: Tokens.title
            text: page.title
            Accessible.role: Accessible.Heading
            Accessible.name: page.title
        }
        StepText {
            id: subheading
            x: page.contentX
            y: heading.y + heading.height + Tokens.space4
            width: page.contentWidth
            visible: page.sub !== ""
            step: Tokens.reason
            color: Tokens.inkSoft
            text: page.sub
        }
        Column {
            id: column
            x: page.contentX
            y: page.sub !== "" ? subheading.y + subheading.height + Tokens.space16
                               : page.title !== "" ? heading.y + heading.height + Tokens.space16
                                                   : Tokens.space16
            width: page.contentWidth
            spacing: Tokens.betweenStrips
        }
    }
}
