pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components

// A list to choose one from, for the column or question of that place. askFor() opens it with [{word, sub}];
// emits picked(place, index).
BottomSheet {
    id: sheet

    property int place: -1
    property var options: []

    signal picked(int place, int index)

    function askFor(place: int, title: string, options: var) {
        sheet.place = place;
        sheet.title = title;
        sheet.options = options;
        sheet.open();
    }

    closeText: qsTr("Close")

    Repeater {
        model: sheet.options

        PressArea {
            id: option

            required property int index
            required property var modelData

            width: parent.width
            implicitHeight: Math.max(Tokens.target, words.height + topPadding + bottomPadding)
            leftPadding: Tokens.stripPadding
            rightPadding: Tokens.stripPadding
            topPadding: Tokens.space8
            bottomPadding: Tokens.space8
            corner: Tokens.radiusPaper
            text: option.modelData.word
            Accessible.description: option.modelData.sub ?? ""
            onActivated: {
                sheet.close();
                sheet.picked(sheet.place, option.index);
            }

            Column {
                id: words
                x: option.leftPadding
                anchors.verticalCenter: parent.verticalCenter
                width: option.availableWidth

                StepText {
                    width: parent.width
                    step: Tokens.bodyStrong
                    text: option.modelData.word
                    Accessible.ignored: true
                }
                StepText {
                    width: parent.width
                    visible: text !== ""
                    step: Tokens.reason
                    color: Tokens.inkSoft
                    text: option.modelData.sub ?? ""
                    Accessible.ignored: true
                }
            }
            background: StripGround {
                pressed: option.down
            }
        }
    }
}
