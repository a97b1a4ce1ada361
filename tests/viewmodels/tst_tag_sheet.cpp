// Sheets of tags: for whom, on which paper, and the codes that go with them.
#include "fonts.h"
#include "tags/code.h"
#include "tags/symbol.h"
#include "viewmodels/other_hand.h"
#include "viewmodels/sheet_bench.h"
#include "viewmodels/tagsheetmodel.h"

using namespace burrow;
using namespace burrow::test;

namespace {

using Bench = SheetBench<TagSheetModel>;

/// The places among kinds() while nobody in particular is chosen.
enum Kind { everyone, shelf, blank };

QStringList texts(const Sheet& sheet) {
    QStringList texts;
    if (sheet.isEmpty()) return texts;
    for (const auto& command : sheet.page()->commands) {
        const auto* text = std::get_if<documents::Text>(&command);
        if (text != nullptr) texts.append(QString::fromStdString(text->text));
    }
    return texts;
}

std::size_t symbols(const Sheet& sheet) {
    std::size_t count = 0;
    if (sheet.isEmpty()) return count;
    for (const auto& command : sheet.page()->commands) {
        count += std::holds_alternative<documents::SymbolMark>(command);
    }
    return count;
}

/// Whether the square of that code is on the page.
bool holdsCode(const Sheet& sheet, const std::string& code) {
    const auto square = tags::encode(tags::payload(code, tags::printedSide)).value();
    const auto& commands = sheet.page()->commands;
    return std::any_of(commands.begin(), commands.end(), [&](const documents::Command& command) {
        const auto* mark = std::get_if<documents::SymbolMark>(&command);
        return mark != nullptr && mark->symbol == square;
    });
}

std::optional<std::string> codeOf(Bench& bench, SubjectId subject) {
    return bench.at.desk.room()->find(subject)->kept.tagCode;
}

}  // namespace

class TestTagSheet : public QObject {
    Q_OBJECT

private slots:
    void initTestCase() { QVERIFY(loadFonts()); }

    void holdsEveryoneWhoIsKept() {
        Bench bench;
        bench.settle();
        QCOMPARE(bench.model.summary(), QString("3 tags on one page."));
        QCOMPARE(symbols(bench.model.sheet()), 3U);
        QVERIFY(texts(bench.model.sheet()).contains("214"));
        QVERIFY(!texts(bench.model.sheet()).contains("331"));  // it was sold
        bench.save();
        QCOMPARE(bench.model.savedText(), QString("Saved as KR-tags.pdf in Documents."));
        bench.save();
        QVERIFY(bench.saved("KR-tags-2.pdf").startsWith("%PDF-"));
    }

    void nobodyIsSaidOnlyWhereThereIsNobody() {
        Bench bench;
        QVERIFY2(bench.model.summary().isEmpty(), qPrintable(bench.model.summary()));
        bench.model.setSubjects({"00000000-0000-7000-8000-000000000000"});
        bench.settle();
        QVERIFY(bench.model.summary().startsWith("There is nobody to print for"));
        QCOMPARE(bench.model.pageCount(), 0);
    }

    void newCodesAreGivenWhenTheFileIsMade() {
        Bench bench;
        OtherHand hand(bench.at);
        const auto newcomer = hand.add("402", "Grammostola pulchra");
        bench.settle();
        QVERIFY2(bench.model.summary().endsWith("One has no code yet and gets it when the file is "
                                                "made."),
                 qPrintable(bench.model.summary()));
        QCOMPARE(symbols(bench.model.sheet()), 4U);
        QVERIFY(!codeOf(bench, newcomer));  // looking gives nothing out
        const auto shown = bench.model.sheet();
        bench.save();
        QVERIFY(codeOf(bench, newcomer));
        QVERIFY(holdsCode(shown, *codeOf(bench, newcomer)));  // what was looked at is what counts
        QCOMPARE(bench.at.desk.doneText(), QString("one tag given out"));
        QCOMPARE(bench.model.summary(), QString("4 tags on one page."));
        QVERIFY(holdsCode(bench.model.sheet(), *codeOf(bench, newcomer)));
    }

    void codesThatWereShownStay() {
        Bench bench;
        OtherHand hand(bench.at);
        const auto first = hand.add("402", "Grammostola pulchra");
        bench.settle();
        const auto shown = bench.model.sheet();
        const auto second = hand.add("403", "Grammostola pulchra");
        bench.settle();
        QVERIFY(bench.model.summary().contains("2 have no code yet"));
        bench.save();
        QVERIFY(holdsCode(shown, *codeOf(bench, first)));
        QVERIFY(holdsCode(bench.model.sheet(), *codeOf(bench, second)));
        QVERIFY(codeOf(bench, first) != codeOf(bench, second));
    }

    void aPrintedCodeStaysItsOwnAfterAnUndo() {
        Bench bench;
        OtherHand hand(bench.at);
        const auto newcomer = hand.add("402", "Grammostola pulchra");
        bench.save();
        const auto code = codeOf(bench, newcomer);
        bench.at.desk.undo();
        bench.settle();
        QVERIFY(!codeOf(bench, newcomer));
        bench.save();
        QCOMPARE(codeOf(bench, newcomer), code);
    }

    void codesOfAFileThatFailedAreKept() {
        Bench bench;
        OtherHand hand(bench.at);
        const auto newcomer = hand.add("402", "Grammostola pulchra");
        bench.files.setWeather(FakeFiles::Weather::noRoom);
        bench.save();
        QVERIFY(bench.model.trouble().contains("no room left"));
        const auto code = codeOf(bench, newcomer);
        bench.files.setWeather(FakeFiles::Weather::fair);
        bench.save();
        QCOMPARE(codeOf(bench, newcomer), code);
        QVERIFY(bench.saved("KR-tags.pdf").startsWith("%PDF-"));
    }

    void holdsOneShelf() {
        Bench bench;
        bench.model.setKind(shelf);
        QVERIFY(bench.model.isByShelf());
        QCOMPARE(bench.model.shelves().size(), 2);
        QCOMPARE(bench.model.shelves().at(0).toMap().value("count").toString(), QString("2 tags"));
        QCOMPARE(bench.model.shelfName(), QString("Shelf A"));
        bench.settle();
        QCOMPARE(symbols(bench.model.sheet()), 2U);
        bench.model.setShelf(1);
        bench.settle();
        QCOMPARE(bench.model.shelfName(), QString("Shelf C"));
        QVERIFY(texts(bench.model.sheet()).contains("260"));
        bench.model.setShelf(9);
        QCOMPARE(bench.model.shelf(), 1);
    }

    void aShelfThatEmptiesIsNotAskedFor() {
        Bench bench;
        bench.model.setKind(shelf);
        bench.model.setShelf(1);
        OtherHand hand(bench.at);
        FactBody all;
        all.count = 12;
        hand.record({FactDraft{bench.at.group, FactKind::sold, all, {}}});
        bench.settle();
        QCOMPARE(bench.model.shelf(), 0);
        QCOMPARE(symbols(bench.model.sheet()), 2U);
    }

    void holdsThoseWhoWereChosen() {
        Bench bench;
        bench.model.setSubjects({bench.at.id(bench.at.pulchra), bench.at.id(bench.at.gone)});
        QCOMPARE(bench.model.kinds().at(0).toMap().value("sub").toString(), QString("2 chosen"));
        bench.settle();
        QCOMPARE(symbols(bench.model.sheet()), 1U);  // the other one was sold
        QVERIFY(texts(bench.model.sheet()).contains("118"));
    }

    void papersHaveTheirSizes() {
        // ISO 216 and ANSI/ASME Y14.1, in millimetres.
        Bench bench;
        bench.settle();
        QCOMPARE(bench.model.sheet().page()->width.value, 210.0);
        QCOMPARE(bench.model.sheet().page()->height.value, 297.0);
        bench.model.setPaper(1);
        bench.settle();
        QCOMPARE(bench.model.sheet().page()->width.value, 215.9);
        QCOMPARE(bench.model.sheet().page()->height.value, 279.4);
    }

    void blankStockHasCodesThatNobodyHas() {
        Bench bench;
        bench.model.setKind(blank);
        bench.settle();
        QVERIFY(bench.model.isBlank());
        QCOMPARE(bench.model.summary(), QString("27 tags on one page."));
        const auto before = bench.at.desk.doneSerial();
        bench.save();
        QCOMPARE(bench.model.savedText(), QString("Saved as KR-blank-tags.pdf in Documents."));
        QCOMPARE(bench.at.desk.doneSerial(), before);  // the first scan says what they hang on
    }

    void morePagesCanBeTurned() {
        Bench bench;
        bench.model.setKind(blank);
        bench.model.setBlankCount("60");
        bench.settle();
        QCOMPARE(bench.model.summary(), QString("60 tags on 3 pages."));
        QCOMPARE(bench.model.pageText(), QString("Page 1 of 3"));
        const auto first = bench.model.sheet();
        bench.model.setPage(2);
        QCOMPARE(bench.model.pageText(), QString("Page 3 of 3"));
        QVERIFY(!(bench.model.sheet() == first));
        QCOMPARE(symbols(bench.model.sheet()), 6U);
        bench.model.setBlankCount("30");
        bench.settle();
        QCOMPARE(bench.model.pageText(), QString("Page 2 of 2"));  // as near as there is one
        bench.model.setKind(everyone);
        QCOMPARE(bench.model.page(), 0);
    }

    void oddCountsLeaveTheSheetAsItIs_data() {
        QTest::addColumn<QString>("typed");
        QTest::newRow("none") << "0";
        QTest::newRow("nothing") << "";
        QTest::newRow("less than none") << "-4";
        QTest::newRow("a part") << "2.5";
        QTest::newRow("a word") << "many";
        QTest::newRow("more than a day's cutting") << "541";
        QTest::newRow("more than a number") << "99999999999999";
    }
    void oddCountsLeaveTheSheetAsItIs() {
        QFETCH(QString, typed);
        Bench bench;
        bench.model.setKind(blank);
        bench.model.setBlankCount("12");
        bench.settle();
        bench.model.setBlankCount(typed);
        bench.settle();
        QVERIFY(bench.model.blankError().startsWith("A whole number from 1 to 540"));
        QCOMPARE(bench.model.blankCount(), typed);
        QCOMPARE(symbols(bench.model.sheet()), 12U);
        bench.model.setBlankCount(" 540 ");
        bench.settle();
        QVERIFY(bench.model.blankError().isEmpty());
        QCOMPARE(bench.model.summary(), QString("540 tags on 20 pages."));
    }
};

QTEST_MAIN(TestTagSheet)
#include "tst_tag_sheet.moc"
