import QtQuick

// A tag number. `size` is one of "row", "label" (on the page of one animal) and "huge" (at the
// tub).
StepText {
    id: tag

    property string size: "row"

    step: tag.size === "huge" ? Tokens.tagHuge : tag.size === "label" ? Tokens.tagLarge : Tokens.tag
    wrapMode: Text.WrapAnywhere
}
