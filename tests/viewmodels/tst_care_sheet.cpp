// The care sheet on the screen, as a file and handed on.
#include <QSemaphore>

#include "fonts.h"
#include "viewmodels/caresheetmodel.h"
#include "viewmodels/other_hand.h"
#include "viewmodels/sheet_bench.h"

using namespace burrow;
using namespace burrow::test;

namespace {

class Bench : public SheetBench<CareSheetModel> {
public:
    Bench() { show(at.hamorii); }
    void show(SubjectId subject) {
        model.setSubject(at.id(subject));
        settle();
    }
};

QString wordsOf(const Sheet& sheet) {
    QStringList words;
    if (sheet.isEmpty()) return {};
    for (const auto& command : sheet.page()->commands) {
        const auto* text = std::get_if<documents::Text>(&command);
        if (text != nullptr) words.append(QString::fromStdString(text->text));
    }
    return words.join(' ');
}

constexpr const char* fileName = "KR-214-care-sheet.pdf";

}  // namespace

class TestCareSheet : public QObject {
    Q_OBJECT

private slots:
    void initTestCase() { QVERIFY(loadFonts()); }

    void showsThePageAsItWillBePrinted() {
        Bench bench;
        QCOMPARE(bench.model.pageCount(), 1);
        QCOMPARE(bench.model.pageText(), QString("Page 1 of 1"));
        QCOMPARE(bench.model.fileName(), QString(fileName));
        QVERIFY(!bench.model.sheet().isEmpty());
        QVERIFY(wordsOf(bench.model.sheet()).contains("Brachypelma hamorii"));
        bench.model.setPage(5);
        QCOMPARE(bench.model.page(), 0);
        bench.model.setPage(-1);
        QCOMPARE(bench.model.page(), 0);
    }

    void isSavedBesideWhatIsThere() {
        Bench bench;
        bench.save();
        QCOMPARE(bench.model.savedText(), QString("Saved as %1 in Documents.").arg(fileName));
        const auto first = bench.saved(fileName);
        QVERIFY(first.startsWith("%PDF-"));
        logAMeal(bench);
        bench.save();
        QVERIFY(bench.model.savedText().contains("KR-214-care-sheet-2.pdf"));
        QVERIFY(bench.saved("KR-214-care-sheet-2.pdf").startsWith("%PDF-"));
        QCOMPARE(bench.saved(fileName), first);
    }

    void whatCannotBeWrittenIsSaidAndCanBeTriedAgain_data() {
        QTest::addColumn<int>("weather");
        QTest::addColumn<QString>("words");
        QTest::newRow("write protected")
            << static_cast<int>(FakeFiles::Weather::writeProtected) << "may not write";
        QTest::newRow("full") << static_cast<int>(FakeFiles::Weather::noRoom) << "no room left";
    }
    void whatCannotBeWrittenIsSaidAndCanBeTriedAgain() {
        QFETCH(int, weather);
        QFETCH(QString, words);
        Bench bench;
        bench.save();
        bench.files.setWeather(static_cast<FakeFiles::Weather>(weather));
        bench.save();
        QVERIFY2(bench.model.trouble().contains(words), qPrintable(bench.model.trouble()));
        QVERIFY(bench.model.savedText().isEmpty());  // not even what was said of the first one
        QCOMPARE(bench.model.pageCount(), 1);
        bench.files.setWeather(FakeFiles::Weather::fair);
        bench.save();
        QVERIFY(bench.model.trouble().isEmpty());
        QVERIFY(bench.model.savedText().contains("-2.pdf"));
    }

    void aFolderThatIsAFileIsSaid() {
        Bench bench;
        QFile file(QString::fromStdString((bench.folder() / "tray").string()));
        QVERIFY(file.open(QIODevice::WriteOnly));
        bench.model.saveTo(QUrl::fromLocalFile(file.fileName()));
        QTRY_VERIFY(!bench.model.isBusy());
        QVERIFY(bench.model.trouble().contains("Nothing was changed"));
        QVERIFY(bench.model.savedText().isEmpty());
    }

    void aFolderOnAnotherDeviceIsSaid() {
        Bench bench;
        bench.model.saveTo(QUrl("content://provider/tree/sheets"));
        QVERIFY(bench.model.trouble().contains("not on this device"));
        QVERIFY(!bench.model.isBusy());
    }

    void isSavedOnceATap() {
        Bench bench;
        bench.model.saveTo(bench.folderUrl());
        bench.model.saveTo(bench.folderUrl());
        bench.model.share();
        QTRY_VERIFY(!bench.model.isBusy());
        bench.settle();
        QVERIFY(bench.saved("KR-214-care-sheet-2.pdf").isEmpty());
        QVERIFY(bench.sharer.shared().empty());
    }

    void isHandedToAnotherApp() {
        Bench bench;
        QVERIFY(bench.model.canShare());
        bench.share();
        bench.share();
        QCOMPARE(bench.sharer.shared().size(), 2U);
        QCOMPARE(bench.sharer.shared().at(1), bench.at.folder.path() / "shared" / fileName);
        QVERIFY(bench.bytes(bench.sharer.shared().at(1)).startsWith("%PDF-"));
        QVERIFY(bench.model.trouble().isEmpty());
    }

    void aDeviceWithoutTakersSaysSo() {
        Bench bench;
        bench.sharer.setNobodyThere();
        bench.share();
        QVERIFY(bench.model.trouble().startsWith("No app on this device takes"));
        QVERIFY(!bench.model.isBusy());
        bench.files.setWeather(FakeFiles::Weather::noRoom);
        bench.share();
        QVERIFY(bench.model.trouble().contains("no room left"));
        QVERIFY(bench.sharer.shared().empty());
    }

    void followsTheBook() {
        Bench bench;
        const auto before = wordsOf(bench.model.sheet());
        logAMeal(bench);
        bench.settle();
        QVERIFY(wordsOf(bench.model.sheet()) != before);
    }

    void saysWhatItLacks() {
        Bench bench;
        QVERIFY(bench.model.lacksContact());
        QVERIFY(bench.model.gap().isEmpty());
        OtherHand hand(bench.at);
        hand.record({SetDraft{
            ThingType::book, hand.book().id().uuid, {{setting::contact, "Kiln Row, table 12"}}}});
        QVERIFY(!bench.model.lacksContact());
        bench.settle();
        QVERIFY(wordsOf(bench.model.sheet()).contains("Kiln Row, table 12"));
        bench.show(hand.add("402", "Nobody nullus"));
        QVERIFY(bench.model.gap().contains("Nobody nullus"));
        QCOMPARE(bench.model.pageCount(), 1);
    }

    void ofNobodyThereIsNone() {
        Bench bench;
        bench.model.setSubject("00000000-0000-7000-8000-000000000000");
        QVERIFY(bench.model.isMissing());
        QCOMPARE(bench.model.pageCount(), 0);
        QVERIFY(bench.model.sheet().isEmpty() && bench.model.pageText().isEmpty());
        bench.save();
        bench.share();
        QVERIFY(bench.sharer.shared().empty());
        QVERIFY(std::filesystem::is_empty(bench.folder()));
    }

    void isNeverOfSomebodyElse() {
        Bench bench;
        QSemaphore isFree;  // the printer has its hands full until then
        bench.printer.layOut(
            &bench.model,
            [&isFree](const documents::TextMeasure&) -> Result<std::vector<documents::Page>> {
                isFree.acquire();
                return std::vector<documents::Page>{};
            },
            [](const Result<Printer::Pages>&) {});
        bench.model.setSubject(bench.at.id(bench.at.pulchra));
        bench.at.settle();
        bench.model.setSubject("00000000-0000-7000-8000-000000000000");
        isFree.release();
        bench.settle();
        QCOMPARE(bench.model.pageCount(), 0);
    }

private:
    static void logAMeal(Bench& bench) {
        FactBody body;
        body.outcome = Outcome::ate;
        OtherHand(bench.at).record({FactDraft{bench.at.hamorii, FactKind::offered, body, {}}});
    }
};

QTEST_MAIN(TestCareSheet)
#include "tst_care_sheet.moc"
