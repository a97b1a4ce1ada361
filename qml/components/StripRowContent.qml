import QtQuick

// The inside of a StripRow. Beside each other up to 1.3 times the text size, then stacked: punch
// and tag, binomial, reason. A long tag stacks too. Mirrored for the left hand.
Item {
    id: body

    required property string punch
    required property string tag
    required property string binomial
    required property string verb
    required property string reason
    required property bool held
    required property bool look
    property alias line: moultLine

    readonly property real pad: Tokens.rowPadding
    readonly property bool stacked: Tokens.rowsStack || tagText.implicitWidth > 96
    readonly property color tone: body.look ? Tokens.stop : body.held ? Tokens.inkSoft : Tokens.ink
    readonly property real tagRight: punchMark.width + Tokens.space12 + tagText.width

    implicitHeight: Math.max(88, words.y + words.height + body.pad)
    LayoutMirroring.enabled: Tokens.leftHanded
    LayoutMirroring.childrenInherit: true

    Punch {
        id: punchMark
        anchors.left: parent.left
        anchors.leftMargin: body.pad
        y: Math.round(tagText.y + (tagText.height - height) / 2)
        kind: body.punch
        Binding on tone {
            value: body.tone
            when: body.look || body.held
        }
    }
    TagText {
        id: tagText
        anchors.left: punchMark.right
        anchors.leftMargin: Tokens.space12
        y: body.pad
        width: Math.min(implicitWidth, body.width - 2 * body.pad - punchMark.width - Tokens.space12)
        text: body.tag
        color: body.tone
        Accessible.ignored: true
    }
    Rectangle {
        id: rule

        // Tags of up to three characters share one column.
        readonly property real inset: punchMark.width + Tokens.space20
                                      + Math.max(tagText.width, Math.ceil(3 * Tokens.tag.digit))

        anchors.left: parent.left
        anchors.leftMargin: body.pad + rule.inset
        y: Tokens.space12
        width: Tokens.lineHairline
        height: parent.height - 2 * Tokens.space12
        color: Tokens.rule
        visible: !body.stacked
    }
    // The text is read from the left in either hand.
    Item {
        id: words

        readonly property real beside: body.stacked ? body.pad
                                                    : body.pad + rule.inset + Tokens.space12
        readonly property real lineWidth: moultLine.visible && !body.stacked
                                          ? moultLine.width + Tokens.space8 : 0

        x: Tokens.leftHanded ? body.pad : words.beside
        y: body.stacked ? tagText.y + tagText.height + Tokens.space8 : body.pad - 1
        width: body.width - words.beside - body.pad
        height: reasonText.y + reasonText.height
        LayoutMirroring.enabled: false
        LayoutMirroring.childrenInherit: true

        Latin {
            id: name
            objectName: "binomial"
            width: parent.width - words.lineWidth
            text: body.binomial
            color: body.tone
            Accessible.ignored: true
        }
        ReasonText {
            id: reasonText
            y: name.height + (body.stacked ? Tokens.space8 : Tokens.space4)
            width: parent.width
            verb: body.verb
            reason: body.reason
            verbColor: body.look ? Tokens.stop : Tokens.ink
            Accessible.ignored: true
        }
    }
    MoultLine {
        id: moultLine

        readonly property real room: body.stacked ? body.width - 3 * body.pad - body.tagRight
                                                  : words.width - name.implicitWidth - Tokens.space8

        x: body.stacked && Tokens.leftHanded ? body.pad : words.x + words.width - width
        y: body.stacked ? Math.round(tagText.y + (tagText.height - height) / 2) : body.pad
        width: body.stacked ? Math.max(62, Math.min(implicitWidth, moultLine.room)) : 62
        visible: moultLine.nowDay !== 0 && moultLine.room >= 62
        size: MoultLine.InRow
        Accessible.ignored: true
    }
}
