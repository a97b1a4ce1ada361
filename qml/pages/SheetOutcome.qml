import QtQuick
import Burrow.Components
import Burrow.ViewModels

// Whether a sheet was saved, and where, or what kept it from being.
Column {
    id: outcome

    required property SheetModel model

    spacing: Tokens.betweenStrips

    MessageStrip {
        width: parent.width
        visible: outcome.model.savedText !== ""
        tone: "ok"
        happened: outcome.model.savedText
    }
    MessageStrip {
        width: parent.width
        visible: outcome.model.trouble !== ""
        tone: "stop"
        happened: outcome.model.trouble
    }
}
