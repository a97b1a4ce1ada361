pragma ComponentBehavior: Bound
import QtQuick
import Burrow.Components
import Burrow.ViewModels

// The photos of one moult, large, with those of the same animal's earlier moults for comparison. The
// first touch shows a photo in its own colours, the next one opens it. Emits looked(at) for one of this
// moult, and earlierLooked(at).
Column {
    id: photos

    required property SexModel model
    property bool wide: false

    signal looked(at: int)
    signal earlierLooked(at: int)

    spacing: Tokens.betweenStrips

    Repeater {
        model: photos.model.photos

        PhotoBox {
            id: box

            required property int index
            required property var modelData

            width: photos.width
            height: Math.round(width * 0.75)
            source: modelData.url
            text: modelData.name
            onActivated: {
                if (box.warm)
                    box.bright = true;
                else
                    photos.looked(box.index);
            }
        }
    }
    Strip {
        width: parent.width
        visible: photos.model.earlier.length > 0
        spacing: Tokens.space12

        Heading {
            width: parent.width
            level: 2
            text: qsTr("Its earlier moults")
        }
        Flow {
            width: parent.width
            spacing: Tokens.space12

            Repeater {
                model: photos.model.earlier

                Column {
                    id: entry

                    required property int index
                    required property var modelData

                    width: photos.wide ? 176 : 136
                    spacing: Tokens.space4

                    PhotoBox {
                        id: old
                        width: parent.width
                        height: Math.round(width * 0.75)
                        source: entry.modelData.thumbnail
                        longestSide: 320
                        text: entry.modelData.name
                        onActivated: {
                            if (old.warm)
                                old.bright = true;
                            else
                                photos.earlierLooked(entry.index);
                        }
                    }
                    StepText {
                        width: parent.width
                        step: Tokens.label
                        color: Tokens.inkSoft
                        text: entry.modelData.name
                        Accessible.ignored: true
                    }
                }
            }
        }
    }
}
