import QtQuick
import Burrow.Components
import Burrow.ViewModels

// What two books say differently, one at a time.
BookPage {
    id: page

    readonly property DifferencesModel differences: DifferencesModel {
        desk: page.kit.desk
    }
    readonly property bool settled: page.differences.ready && page.differences.count === 0

    title: qsTr("Differences")
    sub: qsTr("Said on two phones that did not know of each other")
    mainText: page.settled ? qsTr("Done") : ""
    mainGlyph: "check"
    onMain: page.kit.navigation.backed()

    DifferenceCard {
        width: parent.width
        visible: page.differences.count > 0
        model: page.differences
    }
    EmptyStrip {
        width: parent.width
        visible: page.settled
        sentence: page.differences.summary
        detail: qsTr("What was said on two phones at the same time would stand here, for you to choose.")
    }
}
