import QtQuick

// The title of a page, or with `level: 2` the heading of a part. A screen reader finds it as one.
StepText {
    id: heading

    property int level: 1

    step: heading.level === 1 ? Tokens.title : Tokens.heading
    Accessible.role: Accessible.Heading
    Accessible.name: heading.text
}
