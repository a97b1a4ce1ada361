// Reading text, in ink.
StepText {
    step: Tokens.body
}
