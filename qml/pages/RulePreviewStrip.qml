import QtQuick
import Burrow.Components

// What changes for one animal, a line for each kind of care.
Strip {
    id: strip

    required property string tag
    required property string binomial
    required property string says

    spacing: 2
    Accessible.role: Accessible.StaticText
    Accessible.name: strip.tag + ", " + strip.binomial + ". " + strip.says

    TagText {
        width: parent.width
        text: strip.tag
        Accessible.ignored: true
    }
    Latin {
        width: parent.width
        text: strip.binomial
        Accessible.ignored: true
    }
    StepText {
        width: parent.width
        step: Tokens.reason
        text: strip.says
        Accessible.ignored: true
    }
}
