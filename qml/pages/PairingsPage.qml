import QtQuick

// The place for pairings, sacs and loans, which this version does not keep yet.
ComingPage {
    title: qsTr("Pairings")
    sentence: qsTr("Pairings are not kept here yet")
    detail: qsTr("A later version keeps pairings, egg sacs, sling counts and loans, and says who is related to whom. Until then, write a note on the animal's page; it stays in its history.")
}
