// Our symbols against other people's libraries: zbar reads what we write, we read what libqrencode
// writes, and both encoders agree module for module once the mask is taken off.
#include "zbar_reader.h"

#include <qrencode.h>

#include <QtTest>
#include <memory>

#include "pictures.h"
#include "tags/code.h"

using namespace burrow;
using namespace burrow::tags;

namespace {

std::string randomPayload(Random& random) { return payload(generateCode(random), Millimetres{20}); }

Symbol byQrencode(const std::string& text, int version) {
    const std::unique_ptr<QRcode, decltype(&QRcode_free)> code(
        QRcode_encodeString(text.c_str(), version, QR_ECLEVEL_M, QR_MODE_8, 1), QRcode_free);
    Symbol symbol(code->width);
    for (int row = 0; row < code->width; ++row) {
        for (int column = 0; column < code->width; ++column) {
            // libqrencode: the lowest bit of a module is 1 for black.
            symbol.setDark(column, row, (code->data[row * code->width + column] & 1) != 0);
        }
    }
    return symbol;
}

/// The mask's number from the format information, ISO/IEC 18004, 7.9.1.
unsigned maskOf(const Symbol& symbol) {
    unsigned bits = 0;
    for (const int column : {2, 3, 4}) bits = bits * 2 + symbol.isDark(column, 8);
    return bits ^ 0b101U;
}

/// ISO/IEC 18004, Table 10.
bool isMasked(unsigned mask, int column, int row) {
    const int i = row;
    const int j = column;
    switch (mask) {
        case 0: return (i + j) % 2 == 0;
        case 1: return i % 2 == 0;
        case 2: return j % 3 == 0;
        case 3: return (i + j) % 3 == 0;
        case 4: return (i / 2 + j / 3) % 2 == 0;
        case 5: return i * j % 2 + i * j % 3 == 0;
        case 6: return (i * j % 2 + i * j % 3) % 2 == 0;
        default: return ((i + j) % 2 + i * j % 3) % 2 == 0;
    }
}

/// Finder, separator, format, timing and alignment modules of version 2.
bool isFunctionModule(int column, int row) {
    const bool finder =
        (column < 9 && row < 9) || (column > 16 && row < 9) || (column < 9 && row > 16);
    const bool alignment = column >= 16 && column <= 20 && row >= 16 && row <= 20;
    return finder || alignment || column == 6 || row == 6;
}

/// The data and error correction modules without their mask, row by row.
std::string codewordModules(const Symbol& symbol) {
    const auto mask = maskOf(symbol);
    std::string modules;
    for (int row = 0; row < symbol.size(); ++row) {
        for (int column = 0; column < symbol.size(); ++column) {
            if (isFunctionModule(column, row)) continue;
            modules += symbol.isDark(column, row) != isMasked(mask, column, row) ? '1' : '0';
        }
    }
    return modules;
}

}  // namespace

class TestSymbols : public QObject {
    Q_OBJECT

private slots:
    void zbarReadsOurs() {
        SeededRandom random(11);
        for (int i = 0; i < 100; ++i) {
            const auto text = randomPayload(random);
            const auto read = test::readByZbar(test::Picture(encode(text).value(), 4).view());
            QCOMPARE(read, std::vector{text});
        }
    }

    // Without the standard's note of the encoding (ECI) zbar guesses, and guesses wrong here.
    void zbarReadsOtherScripts() {
        const std::string text = "Käfer und Grillen für Spinnen";
        QCOMPARE(test::readByZbar(test::Picture(encode(text).value(), 4).view()),
                 std::vector{text});
    }

    void weReadLibqrencode() {
        SeededRandom random(12);
        for (int i = 0; i < 100; ++i) {
            const auto text = randomPayload(random);
            const int version = 2 + i % 6;
            const test::Picture picture(byQrencode(text, version), 4);
            for (const auto effort : {Effort::fast, Effort::thorough}) {
                const auto found = decode(picture.view(), effort);
                QCOMPARE(found.size(), std::size_t{1});
                QCOMPARE(found[0].bytes, text);
            }
        }
    }

    // Encoders read penalty rule 3 differently and choose different masks; everything else is
    // fixed.
    void sameCodewordsAsLibqrencode() {
        SeededRandom random(13);
        for (int i = 0; i < 200; ++i) {
            const auto text = randomPayload(random);
            const auto ours = encode(text).value();
            const auto theirs = byQrencode(text, 2);
            QCOMPARE(ours.size(), theirs.size());
            QCOMPARE(codewordModules(ours).size(), std::size_t{359});
            QCOMPARE(codewordModules(ours), codewordModules(theirs));
        }
    }

    void sameSizesAsLibqrencode() {
        for (int length = 21; length <= 600; length += 7) {
            const std::string text(static_cast<std::size_t>(length), 'Z');
            QCOMPARE(encode(text).value().size(), byQrencode(text, 0).size());
        }
    }
};

QTEST_APPLESS_MAIN(TestSymbols)
#include "tst_symbols.moc"
