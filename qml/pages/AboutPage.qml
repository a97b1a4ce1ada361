pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// What this program is, and under which licences its parts come.
BookPage {
    id: page

    readonly property AboutModel about: AboutModel {}
    property int opened: -1

    title: "Burrowbook"
    sub: page.about.version

    BodyText {
        width: parent.width
        bottomPadding: Tokens.space8
        text: qsTr("A pocket record book for keepers and breeders of tarantulas and other arachnids. Everything stays on this device; nothing is sent unless you hand it over.")
    }
    MessageStrip {
        width: parent.width
        happened: qsTr("Rules of thumb are no advice for an emergency.")
        advice: qsTr("After a bite, a sting, or hairs in the eyes, get medical care. The rules on keeping and selling animals differ from place to place: ask those who know them where you are.")
    }
    SectionHead {
        width: parent.width
        name: qsTr("Fonts")
    }
    Repeater {
        model: page.about.fonts

        Column {
            id: font

            required property int index
            required property var modelData

            width: parent.width

            WayRow {
                width: parent.width
                text: font.modelData.name
                sub: font.modelData.licence
                endGlyph: page.opened === font.index ? "chevron-up" : "chevron-down"
                onActivated: page.opened = page.opened === font.index ? -1 : font.index
            }
            StepText {
                width: parent.width
                visible: page.opened === font.index
                padding: Tokens.space12
                step: Tokens.label
                weight: Font.Normal
                text: font.modelData.text
            }
        }
    }
    SectionHead {
        width: parent.width
        name: qsTr("Libraries")
    }
    LineList {
        width: parent.width
        rows: page.about.libraries
    }
}
