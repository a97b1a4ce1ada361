import QtQuick
import Burrow.Components

Sheet {
    spacing: 4

    Strip {
        width: parent.width
        padding: 6

        FactRow {
            width: parent.width
            name: "Source"
            value: "Bred at Kiln Row"
            sub: "Sac S-07, hatched March 2021"
        }
        FactRow {
            width: parent.width
            name: "Feeding"
            value: "Every 8 days"
            sub: "1 adult cricket or 1 locust"
            tappable: true
        }
        FactRow {
            width: parent.width
            name: "Next moult"
            value: "July to May"
            sub: "From 8 moults"
            estimated: true
        }
        FactRow {
            width: parent.width
            name: "Enclosure"
            value: "not recorded"
            missing: true
            last: true
        }
    }
    Strip {
        width: parent.width

        StepText {
            width: parent.width
            step: Tokens.bodyStrong
            text: "Inside the abdomen skin"
        }
        Item {
            width: 1
            height: 8
        }
        ChoiceTiles {
            width: parent.width
            name: "Inside the abdomen skin"
            current: 0
            options: [
                {
                    word: "Plate",
                    sub: "seen"
                },
                {
                    word: "No plate",
                    sub: "seen"
                },
                {
                    word: "Can't",
                    sub: "tell"
                }
            ]
        }
        Item {
            width: 1
            height: 16
        }
        StepText {
            width: parent.width
            step: Tokens.bodyStrong
            text: "How clearly?"
        }
        CertaintyStops {
            width: parent.width
            name: "How clearly?"
            words: ["Barely", "Partly", "Fairly", "Clearly", "Beyond doubt"]
            current: 3
        }
        CertaintyStops {
            width: parent.width
            name: "How clearly?"
            words: ["Barely", "Partly", "Fairly", "Clearly", "Beyond doubt"]
        }
    }
    PickRow {
        width: parent.width
        name: "Shelf"
        value: "Shelf C, warm"
        sub: "14 tubs stand there"
    }
    PickRow {
        width: parent.width
        name: "Species"
        placeholder: "Choose a species"
    }
    SwitchRow {
        width: parent.width
        text: "Moult photos"
        sub: "Small size, 1.6 MB"
        on: true
        wordOn: "in"
        wordOff: "out"
    }
    SwitchRow {
        width: parent.width
        text: "Names of buyers"
        sub: "Left out"
        wordOn: "in"
        wordOff: "out"
    }
}
