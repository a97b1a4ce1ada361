// The printer of the app: pages laid out in its thread, drawn, and written as PDF.
#include <QFile>
#include <QImage>
#include <QPainter>
#include <QRegularExpression>
#include <QtTest>

#include "fake/fake_files.h"
#include "fonts.h"
#include "print/pdf_printer.h"
#include "support/book.h"

using namespace burrow;
using namespace burrow::test;
using documents::Page;

namespace {

/// A black square in the corner of a page, and a line of text.
Page page(documents::Paper paper) {
    auto page = documents::blankPage(paper);
    page.add(documents::Rectangle{{{10}, {10}, {20}, {20}}, {0}, documents::Ink::black, {}});
    page.add(
        documents::Text{{{10}, {60}}, "Kiln Row", {.size = {12}}, documents::Align::left, {100}});
    return page;
}

class Bench {
public:
    Bench() : printer(files) {}

    Result<Printer::Pages> layOut(Printer::Compose compose) {
        std::optional<Result<Printer::Pages>> answer;
        printer.layOut(&context, std::move(compose),
                       [&](Result<Printer::Pages> pages) { answer = std::move(pages); });
        return QTest::qWaitFor([&] { return answer.has_value(); })
                   ? *std::move(answer)
                   : Result<Printer::Pages>(fail(Trouble::inputOutput, {"no answer"}));
    }
    Done write(Printer::Pages pages) {
        std::optional<Done> answer;
        printer.write(&context, path(), std::move(pages), "Tags of Kiln Row",
                      [&](const Done& done) { answer = done; });
        return QTest::qWaitFor([&] { return answer.has_value(); })
                   ? *answer
                   : Done(fail(Trouble::inputOutput, {"no answer"}));
    }
    [[nodiscard]] std::filesystem::path path() const { return folder.path() / "out" / "sheet.pdf"; }
    [[nodiscard]] QByteArray written() const {
        QFile file(QString::fromStdString(path().string()));
        return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
    }

    ScratchFolder folder;
    FakeFiles files;
    QObject context;
    PdfPrinter printer;
};

/// "[0 0 595 842]": the sizes of the pages in points of 1/72 inch (ISO 32000-1, 14.11.2).
QStringList mediaBoxes(const QByteArray& pdf) {
    static const QRegularExpression box(R"(/MediaBox \[([0-9. ]+)\])");
    QStringList boxes;
    auto found = box.globalMatch(QString::fromLatin1(pdf));
    while (found.hasNext()) {
        QStringList rounded;
        for (const auto& number : found.next().captured(1).split(' ', Qt::SkipEmptyParts)) {
            rounded.append(QString::number(qRound(number.toDouble())));
        }
        boxes.append(rounded.join(' '));
    }
    return boxes;
}

}  // namespace

class TestPrinter : public QObject {
    Q_OBJECT

private slots:
    void initTestCase() { QVERIFY(loadFonts()); }

    void laysOutInItsOwnThread() {
        Bench bench;
        const auto here = QThread::currentThread();
        QThread* there = nullptr;
        documents::TextStyle style;
        style.size = {12};
        const auto pages = bench.layOut([&](const documents::TextMeasure& measure) {
            there = QThread::currentThread();
            const bool isWide = measure.width("Kiln Row", style).value > 10;
            return Result<std::vector<Page>>(
                std::vector<Page>(isWide ? 2 : 0, page(documents::Paper::a4)));
        });
        QCOMPARE(pages->size(), 2U);
        QVERIFY(there != nullptr && there != here);
        QCOMPARE(pages->at(0).shape(), 297.0 / 210.0);
    }

    void handsOnWhatCouldNotBeLaidOut() {
        Bench bench;
        const auto pages = bench.layOut([](const documents::TextMeasure&) {
            return Result<std::vector<Page>>(fail(Trouble::badInput, {"print.nothing"}));
        });
        QCOMPARE(pages.error().message.id, std::string("print.nothing"));
    }

    void writesEachPageInItsOwnSize() {
        Bench bench;
        QVERIFY(bench.write(
            {Sheet(page(documents::Paper::a4)), Sheet(), Sheet(page(documents::Paper::letter))}));
        const auto pdf = bench.written();
        QVERIFY(pdf.startsWith("%PDF-") && pdf.trimmed().endsWith("%%EOF"));
        QCOMPARE(mediaBoxes(pdf), (QStringList{"0 0 595 842", "0 0 612 792"}));
    }

    void nothingIsNoFile() {
        Bench bench;
        const auto done = bench.write({Sheet()});
        QCOMPARE(done.error().message.id, std::string("print.nothing"));
        QVERIFY(bench.written().isEmpty());
    }

    void whatWasThereStaysWhereWritingFails() {
        Bench bench;
        QVERIFY(bench.write({Sheet(page(documents::Paper::a4))}));
        const auto before = bench.written();
        bench.files.setWeather(FakeFiles::Weather::noRoom);
        QCOMPARE(bench.write({Sheet(page(documents::Paper::letter))}).error().trouble,
                 Trouble::full);
        QCOMPARE(bench.written(), before);
    }

    void paintsInMillimetresAndLeavesThePainterAsItWas() {
        Bench bench;
        QImage image(210, 297, QImage::Format_RGB32);
        image.fill(Qt::white);
        QPainter painter(&image);
        painter.setOpacity(0.5);
        const auto pen = painter.pen();
        bench.printer.paint(page(documents::Paper::a4), painter);
        QCOMPARE(painter.opacity(), 0.5);
        QCOMPARE(painter.pen(), pen);
        QVERIFY(painter.transform().isIdentity());
        painter.end();
        QVERIFY(image.pixelColor(20, 20).lightness() < 160);  // half of black on white
        QCOMPARE(image.pixelColor(5, 5), QColor(Qt::white));
        QCOMPARE(image.pixelColor(35, 20), QColor(Qt::white));
    }

    void endsWhileBusy() {
        QObject context;
        for (int i = 0; i < 5; ++i) {
            Bench bench;
            bench.printer.write(&context, bench.path(), {Sheet(page(documents::Paper::a4))}, "t",
                                [](const Done&) { QFAIL("nobody is there"); });
        }
        QCoreApplication::processEvents();
    }
};

QTEST_MAIN(TestPrinter)
#include "tst_printer.moc"
