import QtQuick

// A binomial: wraps where it must, is never shortened. `large` for label headers.
StepText {
    id: latin

    property bool large: false

    step: latin.large ? Tokens.latinLarge : Tokens.latin
    elide: Text.ElideNone
}
