pragma Singleton
import QtQuick
import Burrow.Components

// The one place for colours, type, space, shape, line and motion, by role. The application binds
// `theme`, `textScale` (0.85 to 2), `reducedMotion` and `leftHanded` to the keeper's settings, the
// insets to the screen; everything else follows at once. `rowsStack` and `roundCompact` say when
// layouts change shape.
QtObject {
    id: tokens

    enum Theme { Dim, Day }

    property int theme: Tokens.Theme.Dim
    property real textScale: 1
    property bool reducedMotion: false
    property bool leftHanded: false
    // What the device's own bars and notches cover, in dp.
    property real topInset: 0
    property real bottomInset: 0

    readonly property bool day: tokens.theme === Tokens.Theme.Day
    readonly property real factor: Math.max(0.85, Math.min(2, tokens.textScale))
    readonly property bool rowsStack: tokens.factor >= 1.3
    readonly property bool roundCompact: tokens.factor >= 1.5

    // Colours
    readonly property color ground: tokens.day ? "#E6E9E3" : "#130B08"
    readonly property color strip: tokens.day ? "#FFFFFF" : "#23150F"
    readonly property color raised: tokens.day ? "#F4F6F2" : "#321F16"
    readonly property color well: tokens.day ? "#FFFFFF" : "#0B0604"
    readonly property color ink: tokens.day ? "#0E0C2A" : "#F8DAB9"
    readonly property color inkSoft: tokens.day ? "#38375A" : "#CFA888"
    readonly property color rule: tokens.day ? "#C3C8C0" : "#4F372B"
    readonly property color edge: tokens.day ? "#55566E" : "#9A745D"
    readonly property color act: tokens.day ? "#1C1770" : "#F49B3F"
    readonly property color actInk: tokens.day ? "#FFFFFF" : "#1D0D04"
    readonly property color ok: tokens.day ? "#0A5133" : "#BCC568"
    readonly property color warn: tokens.day ? "#6A4400" : "#F1CC60"
    readonly property color stop: tokens.day ? "#930A1F" : "#FF8064"
    readonly property color est: tokens.day ? "#5A2C8C" : "#DFA070"
    readonly property color hatch: tokens.day ? "#62637A" : "#A07F69"
    // Made from the roles: white paper on a light ground needs an outline, a bar on it a dark rule.
    readonly property color stripEdge: tokens.day ? tokens.faded(tokens.edge, 0.45) : "transparent"
    readonly property color barEdge: tokens.day ? tokens.edge : tokens.rule
    readonly property color heldStrip: tokens.faded(tokens.strip, 0.55)
    readonly property color scrim: tokens.day ? tokens.faded(tokens.ink, 0.55)
                                              : tokens.faded(tokens.well, 0.78)
    readonly property color pressed: tokens.day ? Qt.darker(tokens.raised, 1.1)
                                                : Qt.lighter(tokens.raised, 1.4)
    readonly property color actPressed: tokens.day ? Qt.lighter(tokens.act, 1.5)
                                                   : Qt.darker(tokens.act, 1.15)
    readonly property real moultBandPeak: tokens.day ? 0.38 : 0.48
    readonly property real plotBandPeak: tokens.day ? 0.34 : 0.36

    // Type: three voices
    readonly property string work: "Atkinson Hyperlegible Next"
    readonly property string code: "Atkinson Hyperlegible Mono"
    readonly property string binomial: "Vollkorn"

    readonly property TypeStep tagHuge: TypeStep {
        family: tokens.code; size: 72; line: 72; weight: Font.Bold
        factor: Math.min(1.25, tokens.factor)
    }
    readonly property TypeStep tagLarge: TypeStep {
        family: tokens.code; size: 48; line: 50; weight: Font.Bold
        factor: Math.min(1.25, tokens.factor)
    }
    readonly property TypeStep tag: TypeStep {
        family: tokens.code; size: 30; line: 32; weight: Font.Bold; factor: tokens.factor
    }
    readonly property TypeStep title: TypeStep {
        family: tokens.work; size: 28; line: 32; weight: Font.Bold; factor: tokens.factor
    }
    readonly property TypeStep heading: TypeStep {
        family: tokens.work; size: 20; line: 25; weight: Font.Bold; factor: tokens.factor
    }
    readonly property TypeStep latinLarge: TypeStep {
        family: tokens.binomial; size: 25; line: 30; weight: Font.Medium; italic: true
        factor: tokens.factor
    }
    readonly property TypeStep latin: TypeStep {
        family: tokens.binomial; size: 19; line: 24; weight: Font.Medium; italic: true
        factor: tokens.factor
    }
    readonly property TypeStep slab: TypeStep {
        family: tokens.work; size: 27; line: 30; weight: Font.Bold; factor: tokens.factor
    }
    readonly property TypeStep action: TypeStep {
        family: tokens.work; size: 18; line: 22; weight: Font.DemiBold; factor: tokens.factor
    }
    readonly property TypeStep body: TypeStep {
        family: tokens.work; size: 17; line: 23; weight: Font.Normal; factor: tokens.factor
    }
    readonly property TypeStep bodyStrong: TypeStep {
        family: tokens.work; size: 17; line: 23; weight: Font.Bold; factor: tokens.factor
    }
    readonly property TypeStep reason: TypeStep {
        family: tokens.work; size: 16; line: 21; weight: Font.Normal; factor: tokens.factor
    }
    readonly property TypeStep reasonStrong: TypeStep {
        family: tokens.work; size: 16; line: 21; weight: Font.Bold; factor: tokens.factor
    }
    readonly property TypeStep label: TypeStep {
        family: tokens.work; size: 14; line: 18; weight: Font.DemiBold; factor: tokens.factor
    }
    // Five words stand side by side in the bottom bar, so they grow less.
    readonly property TypeStep barLabel: TypeStep {
        family: tokens.work; size: 14; line: 18; weight: Font.DemiBold
        factor: Math.min(1.2, tokens.factor)
    }
    readonly property TypeStep measure: TypeStep {
        family: tokens.code; size: 17; line: 22; weight: Font.DemiBold; factor: tokens.factor
    }
    readonly property TypeStep tick: TypeStep {
        family: tokens.code; size: 13; line: 16; weight: Font.Medium; factor: tokens.factor
    }

    // Space and size
    readonly property int space4: 4
    readonly property int space8: 8
    readonly property int space12: 12
    readonly property int space16: 16
    readonly property int space20: 20
    readonly property int space24: 24
    readonly property int space32: 32
    readonly property int space48: 48
    readonly property int pageMargin: 16
    readonly property int rowPadding: 14
    readonly property int stripPadding: 18
    readonly property int betweenStrips: 4
    readonly property int betweenTargets: 8
    readonly property int target: 48
    readonly property int shelfTarget: 56
    readonly property int buttonHeight: 60
    readonly property int slabHeight: 116
    readonly property int barHeight: 92
    readonly property int contentWidth: 600
    readonly property int wideFrom: 840
    readonly property int shortBelow: 740
    // Shapes beside text grow with it, but less: they are large already.
    readonly property int icon: Math.round(24 * Math.min(1.5, tokens.factor))
    readonly property int punch: Math.round(24 * Math.min(1.25, tokens.factor))

    // Shape and line
    readonly property int radiusPaper: 2
    readonly property int radiusControl: 16
    readonly property int radiusSlab: 22
    readonly property real lineHairline: 1
    readonly property real lineRule: 1.5
    readonly property real lineControl: 2
    readonly property real lineData: 2.5
    readonly property real lineFocus: 3
    readonly property int edgeBar: 5

    // Motion, in milliseconds
    readonly property int punchTime: tokens.reducedMotion ? 90 : 140
    readonly property int undoInTime: tokens.reducedMotion ? 90 : 180
    readonly property int nextTime: tokens.reducedMotion ? 90 : 220
    readonly property int sheetTime: tokens.reducedMotion ? 90 : 200
    readonly property int undoHold: 8000
    readonly property int oneTouch: 250
    readonly property int waitBefore: 300

    function faded(color: color, alpha: real): color {
        return Qt.rgba(color.r, color.g, color.b, alpha);
    }
}
