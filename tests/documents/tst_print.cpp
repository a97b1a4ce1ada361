// The sheets on paper, as far as a raster of 150, 300 or 600 dots per inch is paper.
#include "zbar_reader.h"

#include <QFontDatabase>
#include <QGuiApplication>
#include <QTemporaryDir>
#include <QtTest>
#include <set>

#include "../support/assets.h"
#include "husbandry/profiles.h"
#include "ink.h"
#include "page_text.h"
#include "print/measure.h"
#include "print/pdfwriter.h"
#include "print/preview.h"
#include "raster.h"
#include "samples.h"

using namespace burrow;
using namespace burrow::documents;
using test::commandsOf;
using test::Patch;

namespace {

/// The symbol with its quiet zone of four modules.
Box zoneOf(const SymbolMark& mark) {
    const auto quiet = (tags::quietZone / static_cast<double>(mark.symbol.size())) * mark.side;
    return {mark.corner.x - quiet, mark.corner.y - quiet, mark.side + 2 * quiet,
            mark.side + 2 * quiet};
}

std::string textIn(const tags::Symbol& symbol) {
    constexpr int pixels = 4;
    const int side = (symbol.size() + 2 * tags::quietZone) * pixels;
    QImage image(side, side, QImage::Format_Grayscale8);
    image.fill(255);
    for (int y = 0; y < symbol.size() * pixels; ++y) {
        for (int x = 0; x < symbol.size() * pixels; ++x) {
            if (!symbol.isDark(x / pixels, y / pixels)) continue;
            image.scanLine(y + tags::quietZone * pixels)[x + tags::quietZone * pixels] = 0;
        }
    }
    const tags::LumaView view{image.constBits(), side, side,
                              static_cast<int>(image.bytesPerLine())};
    return tags::decode(view, tags::Effort::thorough).at(0).bytes;
}

/// A device without room.
class FullFiles final : public Files {
public:
    Result<Bytes> read(const std::filesystem::path&, std::uint64_t) override {
        return fail(Trouble::notFound, {"file.missing"});
    }
    Done write(const std::filesystem::path&, std::span<const std::uint8_t>) override {
        return fail(Trouble::full, {"file.noRoom"});
    }
    bool exists(const std::filesystem::path&) override { return false; }
    Done remove(const std::filesystem::path&) override { return {}; }
};

}  // namespace

class TestPrint : public QObject {
    Q_OBJECT

    const Words words = test::englishWords();
    print::QtTextMeasure measure;
    QTemporaryDir folder;
    std::vector<Page> pages;
    QString pdf;

private slots:
    void initTestCase() {
        const QDir fonts(QStringLiteral(BURROW_ASSETS_DIR "/fonts"));
        for (const auto& file : fonts.entryInfoList({"*.ttf"})) {
            QVERIFY(QFontDatabase::addApplicationFont(file.filePath()) >= 0);
        }
        pages = test::everyPage(words, measure);
        pdf = folder.filePath("sheets.pdf");
        DeviceFiles files;
        QVERIFY(print::PdfWriter(files).write(pdf.toStdString(), pages, "Kiln Row"));
    }

    // What the fonts lack would be drawn in another one, with other widths.
    void everyFontIsOurs() {
        const auto listing = QString::fromUtf8(test::run("pdffonts", {pdf}));
        const auto lines = listing.split('\n', Qt::SkipEmptyParts).mid(2);
        QVERIFY(!lines.isEmpty());
        for (const auto& line : lines) {
            QVERIFY2(line.contains("Atkinson") || line.contains("Vollkorn"), qPrintable(line));
            // Columns of pdffonts: name, type, encoding, embedded, subset, unicode, object.
            QVERIFY2(line.contains(QRegularExpression("yes (yes|no ) yes")), qPrintable(line));
        }
    }

    // ISO 216 and the letter; a PDF page is measured in whole points.
    void pageSizes() {
        const auto info = QString::fromUtf8(
            test::run("pdfinfo", {"-f", "1", "-l", QString::number(pages.size()), pdf}));
        for (std::size_t i = 0; i < pages.size(); ++i) {
            const QRegularExpression size(
                QString("Page +%1 size: +([0-9.]+) x ([0-9.]+) pts").arg(i + 1));
            const auto match = size.match(info);
            QVERIFY2(match.hasMatch(), qPrintable(info));
            const double pointsPerMm = 72 / 25.4;
            QVERIFY(std::abs(match.captured(1).toDouble() - pages[i].width.value * pointsPerMm) <=
                    0.51);
            QVERIFY(std::abs(match.captured(2).toDouble() - pages[i].height.value * pointsPerMm) <=
                    0.51);
        }
    }

    void everySymbolReads_data() {
        QTest::addColumn<int>("dotsPerInch");
        QTest::newRow("a poor printer") << 150;
        QTest::newRow("a usual printer") << 300;
    }
    void everySymbolReads() {
        QFETCH(int, dotsPerInch);
        std::set<std::string> seen;
        std::size_t count = 0;
        for (std::size_t i = 0; i < pages.size(); ++i) {
            const auto image = test::rasterised(pdf, static_cast<int>(i + 1), dotsPerInch);
            QVERIFY(!image.isNull());
            for (const auto& mark : commandsOf<SymbolMark>(pages[i])) {
                const auto text = textIn(mark.symbol);
                const Patch patch(image, zoneOf(mark), dotsPerInch);
                QCOMPARE(test::readByZbar(patch.view()), std::vector{text});
                for (const auto effort : {tags::Effort::fast, tags::Effort::thorough}) {
                    const auto found = tags::decode(patch.view(), effort);
                    QCOMPARE(found.size(), std::size_t{1});
                    QCOMPARE(found[0].bytes, text);
                }
                seen.insert(text);
                ++count;
            }
        }
        // 27 tags on A4, the same on Letter over two sheets, 30 blank ones, three care sheets that
        // share a tag.
        QCOMPARE(count, std::size_t{27 + 27 + 30 + 3});
        QCOMPARE(seen.size(), std::size_t{27 + 30 + 1});
    }

    void symbolsAreTwentyMillimetresInWhitePaper() {
        constexpr int dotsPerInch = 600;
        for (std::size_t i = 0; i < pages.size(); ++i) {
            const auto image = test::rasterised(pdf, static_cast<int>(i + 1), dotsPerInch);
            for (const auto& mark : commandsOf<SymbolMark>(pages[i])) {
                const Patch patch(image, zoneOf(mark), dotsPerInch);
                const auto ink = patch.ink();
                QVERIFY(std::abs(patch.millimetres(ink.width()) - 20) <= 0.1);
                QVERIFY(std::abs(patch.millimetres(ink.height()) - 20) <= 0.1);
                // One dot of smoothing at the edge belongs to the symbol.
                QVERIFY(patch.isWhiteAround(ink.adjusted(-1, -1, 1, 1)));
                const double module = 0.8;
                for (const int margin :
                     {ink.left(), ink.top(), patch.view().width - 1 - ink.right(),
                      patch.view().height - 1 - ink.bottom()}) {
                    QVERIFY(std::abs(patch.millimetres(margin) - 4 * module) <= 0.1);
                }
            }
        }
    }

    void theProofBarIsFiftyMillimetres() {
        constexpr int dotsPerInch = 600;
        for (std::size_t i = 0; i < pages.size(); ++i) {
            if (pages[i].width < Millimetres{200}) continue;
            const auto image = test::rasterised(pdf, static_cast<int>(i + 1), dotsPerInch);
            // The bar ends where the last column of tags does, three of 62 mm in the middle.
            const auto right = 0.5 * (pages[i].width + Millimetres{3 * 62});
            QVERIFY(!image.isNull());
            const Patch strip(image, {right - Millimetres{51}, {7}, {52}, {3.2}}, dotsPerInch);
            QVERIFY(std::abs(strip.millimetres(strip.ink().width()) - 50) <= 0.1);
        }
    }

    // Black on white, no tints, no grey under 60 percent: a sheet must survive a poor photocopy.
    void inksAreBlackGreyAndWhite() {
        for (std::size_t i = 0; i < pages.size(); ++i) {
            const auto image = test::rasterised(pdf, static_cast<int>(i + 1), 150, false);
            std::set<int> greys;
            for (int y = 0; y < image.height(); ++y) {
                for (int x = 0; x < image.width(); ++x) greys.insert(image.constScanLine(y)[x]);
            }
            greys.erase(0);
            greys.erase(255);
            QVERIFY(greys.size() <= 1);
            for (const int grey : greys) QVERIFY(grey <= 255 * 40 / 100);
        }
    }

    void wordsCanBeReadBack() {
        for (std::size_t i = 0; i < pages.size(); ++i) {
            const auto number = QString::number(i + 1);
            const auto read = QString::fromUtf8(
                test::run("pdftotext", {"-layout", "-f", number, "-l", number, pdf, "-"}));
            for (const auto& text : test::textsOf(pages[i])) {
                // Columns are set apart by spaces, so compare word by word.
                for (const auto& word :
                     QString::fromStdString(text).split(' ', Qt::SkipEmptyParts)) {
                    QVERIFY2(read.contains(word), qPrintable(number + ": " + word));
                }
            }
        }
    }

    void noTextIsWiderThanItsRoom() {
        for (const auto& page : pages) {
            for (const auto& text : commandsOf<Text>(page)) {
                const auto width = measure.width(text.text, text.style);
                QVERIFY2(width <= text.room + Millimetres{0.001}, text.text.c_str());
                QVERIFY2(text.text.find("…") == std::string::npos, text.text.c_str());
            }
        }
    }

    // Housing and handling come from the species files: each takes one line, and nothing is cut.
    void everySpeciesHasACareSheet() {
        const auto profiles = Profiles::fromJson(test::assetFiles("species")).value();
        QVERIFY(!profiles.all().empty());
        for (const auto& profile : profiles.all()) {
            auto sheet = test::crowdedSheet();
            sheet.profile = profile;
            for (const auto& line : {profile.housing, profile.handling}) {
                const TextStyle smallest{Face::work, Weight::regular, Points{10}};
                QVERIFY2(measure.width(line, smallest) <= Millimetres{107}, line.c_str());
            }
            const auto page = careSheet(sheet, words, measure).value();
            for (const auto& text : test::textsOf(page)) {
                QVERIFY2(text.find("…") == std::string::npos, (profile.name + text).c_str());
            }
            QCOMPARE(test::clashOn(page, measure, Millimetres{5}), std::string());
            const auto label = TagLabel{sheet.code.value(), "1009",       profile.name,
                                        Form::animal,       Sex::unknown, cautions(profile)};
            const auto tag = tagSheets("Kiln Row", Paper::a4, {&label, 1}, words, measure)->front();
            for (const auto& text : test::textsOf(tag)) {
                QVERIFY2(text.find("…") == std::string::npos, (profile.name + text).c_str());
            }
            QCOMPARE(test::clashOn(tag, measure, Millimetres{5}), std::string());
        }
    }

    // Widths from the font file: 0 to 9 of the code face are equally wide, and a text grows as its
    // size.
    void widthsAreLinear() {
        const TextStyle small{Face::code, Weight::bold, Points{7}};
        const TextStyle large{Face::code, Weight::bold, Points{70}};
        QCOMPARE(measure.width("0", small), measure.width("1", small));
        QCOMPARE(measure.width("1009", large).value, 10 * measure.width("1009", small).value);
        QCOMPARE(measure.width("1009", small).value, 4 * measure.width("0", small).value);
        // No ligature joins what must be found again in the text of the file.
        const TextStyle latin{Face::latin, Weight::medium, Points{10}};
        QCOMPARE(measure.width("ff", latin).value, 2 * measure.width("f", latin).value);
    }

    void previewsShowTheSheet() {
        constexpr int dotsPerInch = 200;
        const auto preview =
            print::renderPreview(pages[0], dotsPerInch).convertToFormat(QImage::Format_Grayscale8);
        QCOMPARE(preview.width(), 1654);
        QCOMPARE(preview.height(), 2339);
        for (const auto& mark : commandsOf<SymbolMark>(pages[0])) {
            const Patch patch(preview, zoneOf(mark), dotsPerInch);
            const auto found = tags::decode(patch.view(), tags::Effort::fast);
            QCOMPARE(found.size(), std::size_t{1});
            QCOMPARE(found[0].bytes, textIn(mark.symbol));
        }
    }

    void troubleIsSaid() {
        QCOMPARE(print::renderPdf({}, "nothing").error().message.id, std::string("print.nothing"));
        FullFiles full;
        const auto written = print::PdfWriter(full).write("sheet.pdf", pages, "Kiln Row");
        QCOMPARE(written.error().trouble, Trouble::full);
    }
};

QTEST_MAIN(TestPrint)
#include "tst_print.moc"
