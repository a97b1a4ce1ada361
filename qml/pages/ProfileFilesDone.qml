import QtQuick
import Burrow.Components
import Burrow.ViewModels

// What became of species that were given away or taken in as a file.
Column {
    id: done

    required property ProfileFiles files

    spacing: Tokens.betweenStrips

    MessageStrip {
        width: parent.width
        visible: done.files.doneText !== ""
        tone: "ok"
        happened: done.files.doneText
        safe: done.files.doneDetail
    }
    MessageStrip {
        width: parent.width
        visible: done.files.trouble !== ""
        tone: "stop"
        happened: done.files.trouble
    }
}
