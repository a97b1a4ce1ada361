pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components

// What to be careful of at this tub, a strip of words. Nothing where nothing is known to be careful of.
Strip {
    id: strip

    required property list<string> cautions

    visible: strip.cautions.length > 0
    bar: Tokens.warn

    Flow {
        width: parent.width
        spacing: Tokens.space8

        Repeater {
            model: strip.cautions

            CautionMark {
                required property string modelData

                word: modelData
            }
        }
    }
}
