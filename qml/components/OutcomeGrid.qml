import QtQuick
import QtQuick.Layouts

// OutcomeButtons two by two, equally wide; one below the other at large text.
GridLayout {
    columns: Tokens.roundCompact ? 1 : 2
    columnSpacing: Tokens.betweenTargets
    rowSpacing: Tokens.betweenTargets
}
