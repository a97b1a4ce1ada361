// A number with its unit: millimetres, counts, prices.
StepText {
    step: Tokens.measure
}
