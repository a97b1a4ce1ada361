import QtQuick
import Burrow.Components

Sheet {
    spacing: 4

    LabelHeader {
        width: parent.width
        tag: "214"
        place: "Kiln Row\nShelf A, tub 3"
        binomial: "Brachypelma hamorii"
        about: "Adult female, 97 in 100"
        size: "24.1 mm"
        verb: "Feed."
        reason: "Ate 9 days ago, usual gap is 8"
    }
    LabelHeader {
        width: parent.width
        punch: "group"
        tag: "260"
        side: "Group"
        place: "Shelf C, warm"
        binomial: "Neoholothele incei"
        about: "20 put in, 16 on the books"
        size: "one web"
    }
    LabelHeader {
        width: parent.width
        punch: "sac"
        tag: "S-21"
        side: "139 with 163"
        place: "paired 3 and 17 February"
        binomial: "Tliltocatl albopilosus"
    }
    LabelHeader {
        width: parent.width
        punch: "sold"
        punchTone: Tokens.ok
        tag: "KR-1318"
        side: "Sold"
        place: "receipt 12"
        binomial: "Ornithoctoninae sp. with a long working name"
    }
    LabelHeader {
        width: parent.width
        huge: true
        punch: "hold"
        tag: "118"
        cautions: ["Hairs"]
        binomial: "Grammostola pulchra"
        about: "Adult female, carapace 22.6 mm"
    }
}
