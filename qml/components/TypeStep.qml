import QtQuick

// One step of the type scale: a font and the height of its lines at the present text size.
// `pixels` and `lineHeight` follow `factor`. `lead` is what a line has over the font's own height
// (negative where it is set tighter), and `above` the half of it that belongs over the text.
// `digit` is the width of a character of the monospaced steps.
QtObject {
    id: step

    required property string family
    required property int size
    required property int line
    required property int weight
    required property real factor
    property bool italic: false

    readonly property int pixels: Math.round(step.size * step.factor)
    readonly property int lineHeight: Math.round(step.line * step.factor)
    readonly property font font: Qt.font({
        family: step.family,
        pixelSize: step.pixels,
        weight: step.weight,
        italic: step.italic
    })
    readonly property real lead: step.lineHeight - Math.ceil(step.metrics.height)
    readonly property real above: Math.round(step.lead / 2)
    readonly property real digit: step.metrics.averageCharacterWidth
    readonly property FontMetrics metrics: FontMetrics {
        font: step.font
    }
}
