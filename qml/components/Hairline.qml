import QtQuick

// The decorative line between facts. Nothing may depend on seeing it.
Rectangle {
    implicitWidth: 100
    implicitHeight: Tokens.lineHairline
    color: Tokens.rule
}
