import QtQuick
import Burrow.Components

// "Feed. Ate 9 days ago": `verb` in bold, then `reason`, as one flowing text that wraps and is
// never cut. Give it a width; the height follows.
LeadShape {
    id: lead

    verbFont: Tokens.reasonStrong.font
    reasonFont: Tokens.reason.font
    lineHeight: Tokens.reason.lineHeight
    verbColor: Tokens.ink
    reasonColor: Tokens.inkSoft
    Accessible.role: Accessible.StaticText
    Accessible.name: lead.verb + " " + lead.reason
}
