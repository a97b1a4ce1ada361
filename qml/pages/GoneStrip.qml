import Burrow.Components

// What a page was about is not in the book.
EmptyStrip {
    drawing: "label"
    sentence: qsTr("Not in the book")
    detail: qsTr("It was taken back, or was never written down. Everything else is where it was.")
}
