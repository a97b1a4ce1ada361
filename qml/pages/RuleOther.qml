import QtQuick

// A value of a rule for others. The keeper's own one opens; emits opened().
WayRow {
    id: other

    required property string value
    required property string from
    property bool own: false

    signal opened

    text: other.value
    sub: other.from
    enabled: other.own
    endGlyph: other.own ? "chevron" : ""
    Accessible.name: other.value + ", " + other.from
    onActivated: other.opened()
}
