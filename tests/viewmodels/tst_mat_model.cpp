// The mat to print: on which paper, under which name, and what its bar measures.
#include <QSignalSpy>

#include "fonts.h"
#include "tags/symbol.h"
#include "viewmodels/matmodel.h"
#include "viewmodels/sheet_bench.h"

using namespace burrow;
using namespace burrow::test;

namespace {

using Bench = SheetBench<MatModel>;

std::vector<PrintedMat> mats(Bench& bench) { return matsOf(bench.at.desk.room()->info()); }

/// Whether the squares of that mat are on the sheet.
bool shows(const Sheet& sheet, const PrintedMat& mat) {
    if (sheet.isEmpty()) return false;
    const auto& commands = sheet.page()->commands;
    return std::all_of(measure::matCorners.begin(), measure::matCorners.end(), [&](auto corner) {
        const auto square =
            tags::encode(measure::matPayload({mat.paper, corner, mat.name})).value();
        return std::any_of(commands.begin(), commands.end(), [&](const auto& command) {
            const auto* mark = std::get_if<documents::SymbolMark>(&command);
            return mark != nullptr && mark->symbol == square;
        });
    });
}

}  // namespace

class TestMat : public QObject {
    Q_OBJECT

private slots:
    void initTestCase() { QVERIFY(loadFonts()); }

    void theBookKnowsAMatBeforeThereIsAFile() {
        Bench bench;
        bench.settle();
        QCOMPARE(bench.model.pageCount(), 1);
        QVERIFY(mats(bench).empty());  // one that is only looked at is none
        bench.save();
        QCOMPARE(mats(bench).size(), 1U);
        const auto mat = mats(bench).front();
        QVERIFY(mat.paper == measure::MatPaper::a5 && !mat.bar);
        QVERIFY(shows(bench.model.sheet(), mat));
        const auto file = QString("mat-A5-%1.pdf").arg(QString::fromStdString(mat.name));
        QCOMPARE(bench.model.savedText(), QString("Saved as %1 in Documents.").arg(file));
        QVERIFY(bench.saved(qPrintable(file)).startsWith("%PDF-"));
    }

    void anotherPaperIsAnotherMat() {
        Bench bench;
        bench.settle();
        bench.model.setPaper(1);
        bench.save();
        bench.model.setPaper(0);
        bench.settle();
        bench.save();
        QCOMPARE(mats(bench).size(), 2U);
        for (const auto& mat : mats(bench)) {
            QCOMPARE(shows(bench.model.sheet(), mat), mat.paper == measure::MatPaper::a5);
        }
    }

    void oneThatIsSavedAgainKeepsItsBar() {
        Bench bench;
        bench.save();
        const auto name = QString::fromStdString(mats(bench).front().name);
        bench.model.setBar(name, "99.2");
        bench.settle();
        bench.save();
        QCOMPARE(mats(bench).size(), 1U);
        QCOMPARE(mats(bench).front().bar, Millimetres{99.2});
    }

    void aBarIsMeasuredOnceForEachMat() {
        Bench bench;
        QSignalSpy kept(&bench.model, &MatModel::barKept);
        bench.save();
        const auto name = bench.model.mats().front().toMap()["name"].toString();
        QVERIFY(!bench.model.mats().front().toMap()["measured"].toBool());
        bench.model.setBar(name, "ten");
        QVERIFY2(bench.model.barError().contains("is no length"),
                 qPrintable(bench.model.barError()));
        bench.model.setBar(name, "9.9");
        QVERIFY2(bench.model.barError().contains("100 mm"), qPrintable(bench.model.barError()));
        QCOMPARE(kept.size(), 0);
        bench.model.setBar(name, "99,4 mm");
        QVERIFY(bench.model.barError().isEmpty());
        QTRY_COMPARE(kept.size(), 1);
        bench.settle();
        const auto line = bench.model.mats().front().toMap();
        QVERIFY(line["measured"].toBool());
        QVERIFY2(line["sub"].toString().contains("99.4 mm"), qPrintable(line["sub"].toString()));
        bench.at.desk.undo();
        bench.settle();
        QVERIFY(!mats(bench).front().bar);
    }

    void aMatFromElsewhereIsListedWhenItIsAskedFor() {
        Bench bench;
        bench.settle();
        QVERIFY(bench.model.mats().isEmpty());
        bench.model.setAsked("A4 7Q2M");
        QCOMPARE(bench.model.mats().size(), 1);
        bench.model.setBar("7Q2M", "98");
        bench.settle();
        QCOMPARE(mats(bench).size(), 1U);
        QVERIFY(mats(bench).front().paper == measure::MatPaper::a4);
        bench.model.setAsked("nonsense");
        QVERIFY(bench.model.asked().isEmpty());
        bench.model.setBar("ZZZZ", "98");
        bench.settle();
        QCOMPARE(mats(bench).size(), 1U);
    }

    void aFullDeviceSaysSo() {
        Bench bench;
        bench.settle();
        bench.files.setWeather(FakeFiles::Weather::noRoom);
        bench.save();
        QVERIFY(!bench.model.trouble().isEmpty());
        QVERIFY(bench.model.savedText().isEmpty());
    }
};

QTEST_MAIN(TestMat)
#include "tst_mat_model.moc"
