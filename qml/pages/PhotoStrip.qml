pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components

// Photos of one animal, small; each opens its entry. Emits opened(entry).
Strip {
    id: strip

    // [{url, entry, text}]
    required property list<var> photos

    signal opened(string entry)

    spacing: Tokens.space12

    StripTitle {
        width: parent.width
        name: qsTr("Photos")
    }
    Flow {
        width: parent.width
        spacing: Tokens.space8

        Repeater {
            model: strip.photos

            PhotoBox {
                required property var modelData

                width: Math.floor((strip.width - 2 * Tokens.rowPadding - 2 * Tokens.space8) / 3)
                height: width
                source: modelData.url
                longestSide: 320
                text: modelData.text
                onActivated: strip.opened(modelData.entry)
            }
        }
    }
}
