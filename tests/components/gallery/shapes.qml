import QtQuick
import Burrow.Components

Sheet {
    Flow {
        width: parent.width
        spacing: 12

        Repeater {
            model: ["blank", "feed", "hold", "premoult", "group", "sac", "look", "done", "sold", "slash", "current"]

            Column {
                id: sample

                required property string modelData

                spacing: 8

                Punch {
                    kind: sample.modelData
                }
                Punch {
                    kind: sample.modelData
                    diameter: 38
                }
            }
        }
    }
    Strip {
        width: parent.width

        Flow {
            width: parent.width
            spacing: 12

            Repeater {
                model: ["blank", "feed", "hold", "premoult", "group", "sac", "look", "done", "sold"]

                Punch {
                    required property string modelData

                    kind: modelData
                }
            }
        }
    }
    RoundHoles {
        width: parent.width
        holes: "done done current open open open slash open open open open open".split(" ")
    }
    RoundHoles {
        width: parent.width
        holes: "done done done slash done done done done done done done slash done done done done current open open open open slash open open open open open open open open".split(" ")
    }
    RoundHoles {
        width: parent.width
        holes: Array(80).fill("done", 0, 30).fill("current", 30, 31).fill("open", 31)
    }
    HatchFill {
        width: parent.width
        height: 40
        corner: 19
    }
    Flow {
        width: parent.width
        spacing: 20

        QrSymbol {
            width: 116
            height: 116
            // A version 1 frame only: three finder patterns and a few modules, not a real symbol.
            modules: {
                const n = 21;
                const bytes = new Uint8Array(n * n);
                const finder = (ox, oy) => {
                    for (let y = 0; y < 7; ++y)
                        for (let x = 0; x < 7; ++x)
                            if (x % 6 === 0 || y % 6 === 0 || (x > 1 && x < 5 && y > 1 && y < 5))
                                bytes[(oy + y) * n + ox + x] = 1;
                };
                finder(0, 0);
                finder(n - 7, 0);
                finder(0, n - 7);
                for (let i = 8; i < n; ++i)
                    for (let j = 8; j < n; ++j)
                        bytes[i * n + j] = (i * 7 + j * 5) % 3 === 0 ? 1 : 0;
                return bytes.buffer;
            }
        }
        CautionMark {
            word: "Fast"
        }
        CautionMark {
            word: "Strong venom"
            plain: true
        }
    }
}
