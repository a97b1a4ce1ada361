// The mat on paper: what is measured by it must be where measure/mat says, to a dot of a 600 dpi raster.
#include "zbar_reader.h"

#include <QFontDatabase>
#include <QGuiApplication>
#include <QTemporaryDir>
#include <QtTest>

#include "../support/assets.h"
#include "documents/mat.h"
#include "ink.h"
#include "page_text.h"
#include "print/measure.h"
#include "print/pdfwriter.h"
#include "raster.h"

using namespace burrow;
using namespace burrow::documents;
using measure::MatPaper;
using test::Patch;

namespace {

constexpr int dotsPerInch = 600;
constexpr double dot = 25.4 / dotsPerInch;

Box boxOf(const measure::MatBox& box) { return {box.x, box.y, box.width, box.height}; }
Box grown(const Box& box, Millimetres by) {
    return {box.x - by, box.y - by, box.width + 2 * by, box.height + 2 * by};
}

}  // namespace

class TestMat : public QObject {
    Q_OBJECT

    const Words words = test::englishWords();
    print::QtTextMeasure measure;
    QTemporaryDir folder;
    QImage images[2];
    Page pages[2];

private slots:
    void initTestCase() {
        const QDir fonts(QStringLiteral(BURROW_ASSETS_DIR "/fonts"));
        for (const auto& file : fonts.entryInfoList({"*.ttf"})) {
            QVERIFY(QFontDatabase::addApplicationFont(file.filePath()) >= 0);
        }
        DeviceFiles files;
        for (const auto paper : {MatPaper::a5, MatPaper::a4}) {
            const auto i = static_cast<std::size_t>(paper);
            pages[i] = matPage(paper, "7Q2M", words, measure).value();
            const auto pdf = folder.filePath(QString("mat%1.pdf").arg(i));
            QVERIFY(print::PdfWriter(files).write(pdf.toStdString(), {&pages[i], 1}, "Mat"));
            images[i] = test::rasterised(pdf, 1, dotsPerInch);
            QVERIFY(!images[i].isNull());
        }
    }
    void squaresAreWhereTheyShouldBe() {
        for (const auto paper : {MatPaper::a5, MatPaper::a4}) {
            const auto& image = images[static_cast<std::size_t>(paper)];
            const auto& layout = measure::layoutOf(paper);
            for (const auto corner : measure::matCorners) {
                const auto box = boxOf(layout.square(corner));
                const auto quiet = (4.0 / 25) * box.width;
                const Patch patch(image, grown(box, quiet), dotsPerInch);
                QCOMPARE(test::readByZbar(patch.view()),
                         std::vector{measure::matPayload({paper, corner, "7Q2M"})});
                const auto ink = patch.ink();
                QVERIFY(std::abs(patch.millimetres(ink.width()) - box.width.value) <= 2 * dot);
                QVERIFY(std::abs(patch.millimetres(ink.height()) - box.height.value) <= 2 * dot);
                QVERIFY(std::abs(patch.millimetres(ink.left()) - quiet.value) <= 2 * dot);
                QVERIFY(std::abs(patch.millimetres(ink.top()) - quiet.value) <= 2 * dot);
                QVERIFY(patch.isWhiteAround(ink.adjusted(-1, -1, 1, 1)));
            }
        }
    }
    void theBarIsAHundredMillimetres() {
        for (const auto paper : {MatPaper::a5, MatPaper::a4}) {
            const auto& layout = measure::layoutOf(paper);
            const Patch strip(images[static_cast<std::size_t>(paper)],
                              {layout.ruler.x - Millimetres{1},
                               layout.ruler.y - Millimetres{4.5},
                               measure::barLength + Millimetres{2},
                               {4}},
                              dotsPerInch);
            QVERIFY(std::abs(strip.millimetres(strip.ink().width()) - 100) <= 2 * dot);
        }
    }
    void theGreyIsAsStated() {
        for (const auto paper : {MatPaper::a5, MatPaper::a4}) {
            const auto& image = images[static_cast<std::size_t>(paper)];
            const auto at = measure::layoutOf(paper).grey.centre();
            const int grey = image.constScanLine(
                static_cast<int>(at.y.value / dot))[static_cast<int>(at.x.value / dot)];
            QVERIFY(std::abs(grey - measure::greyLevel) <= 1);
        }
    }
    void nothingIsPrintedWhereItSaysSo() {
        for (const auto paper : {MatPaper::a5, MatPaper::a4}) {
            for (const auto& box : measure::layoutOf(paper).blank) {
                const Patch patch(images[static_cast<std::size_t>(paper)], boxOf(box), dotsPerInch);
                QVERIFY(patch.isWhiteAround(QRect()));
            }
        }
    }
    void textFits() {
        for (const auto& page : pages) {
            for (const auto& text : test::commandsOf<Text>(page)) {
                QVERIFY2(measure.width(text.text, text.style) <= text.room + Millimetres{0.001},
                         text.text.c_str());
                QVERIFY2(text.text.find("…") == std::string::npos, text.text.c_str());
            }
        }
        QCOMPARE(matPage(MatPaper::a5, "OIL1", words, measure).error().message.id,
                 std::string("measure.badName"));
    }
};

QTEST_MAIN(TestMat)
#include "tst_mat.moc"
