import QtQuick
import Burrow.Components

Sheet {
    SearchLine {
        width: parent.width
        placeholder: "Tag, species or shelf"
        clearText: "Empty the search"
    }
    SearchLine {
        width: parent.width
        placeholder: "Tag, species or shelf"
        clearText: "Empty the search"
        text: "hamorii"
    }
    TextLine {
        width: parent.width
        label: "Tag number"
        text: "0O1Il"
        code: true
        hint: "The number under the square"
    }
    TextLine {
        width: parent.width
        label: "Carapace, mm"
        text: "240"
        error: "A carapace of 240 mm is longer than any on record. Nothing was changed. Type it in mm."
    }
    MessageStrip {
        width: parent.width
        tone: "stop"
        happened: "This file stops halfway"
        safe: "Nothing was changed."
        advice: "Ask for it again."
        actionText: "Choose another file"
    }
    MessageStrip {
        width: parent.width
        happened: "Half siblings"
        safe: "Both come from mother 031. Inbreeding in the slings: 1 in 8."
    }
    MessageStrip {
        width: parent.width
        tone: "ok"
        happened: "Read back and complete"
    }
    Flow {
        width: parent.width
        spacing: 16

        MeasureText {
            text: "24.1 mm"
        }
        MeasureText {
            text: "£486.00"
        }
        TagText {
            text: "0O8B"
        }
    }
    BodyText {
        width: parent.width
        text: "<b>Plain text</b> & nothing else: the line under the label fills in as it feeds and moults."
    }
    Latin {
        width: parent.width
        text: "Pterinochilus murinus"
    }
}
