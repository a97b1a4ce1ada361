import QtQuick
import Burrow.Components

// What a file has to hold to be brought in.
Column {
    id: help

    spacing: Tokens.betweenStrips

    StepText {
        width: parent.width
        bottomPadding: Tokens.space8
        step: Tokens.body
        text: qsTr("Lists you keep elsewhere can be saved as CSV and brought in: animals, their enclosures, what happened to them. Choose one file or several together.")
    }
    LineList {
        width: parent.width
        rows: [
            {
                "name": qsTr("Animals"),
                "value": qsTr("code, species"),
                "sub": qsTr("and sex, hatched_on, acquired_on, source, status, place, enclosure, mother, father, count")
            },
            {
                "name": qsTr("Enclosures"),
                "value": qsTr("code, length_mm"),
                "sub": qsTr("and width_mm, height_mm, substrate_mm, place")
            },
            {
                "name": qsTr("What happened"),
                "value": qsTr("code, at, event"),
                "sub": qsTr("and prey, prey_mm, count, outcome, span_mm, note")
            }
        ]
        note: qsTr("The first line names the columns, in any order. Days are written 2026-05-08. A list with columns and dates of its own can be brought in as well: you are asked what they stand for. Nothing is written before you have seen what was found, and all of it can be undone.")
    }
}
