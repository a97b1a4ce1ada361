// An absence on the page: its days, its plan, and the sheet for the sitter.
#include <QAbstractItemModelTester>

#include "fonts.h"
#include "viewmodels/awaymodel.h"
#include "viewmodels/sheet_bench.h"

using namespace burrow;
using namespace burrow::test;

namespace {

using Bench = SheetBench<AwayModel>;

QStringList headingsOf(AwayModel& model) {
    QStringList all;
    for (const auto& row : model.lines()->rows()) {
        if (!row.heading.isEmpty()) all.append(row.heading);
    }
    return all;
}

QString wordsOf(const Sheet& sheet) {
    QStringList words;
    if (sheet.isEmpty()) return {};
    for (const auto& command : sheet.page()->commands) {
        const auto* text = std::get_if<documents::Text>(&command);
        if (text != nullptr) words.append(QString::fromStdString(text->text));
    }
    return words.join(' ');
}

}  // namespace

class TestAway : public QObject {
    Q_OBJECT

private slots:
    void initTestCase() { QVERIFY(loadFonts()); }

    void isThereBeforeTheDesk() {
        AwayModel model;
        QVERIFY(model.fromText().isEmpty() && model.toText().isEmpty());
        QVERIFY(model.summary().isEmpty() && model.lastMealText().isEmpty());
        QVERIFY(model.call().isEmpty() && model.lengthText().isEmpty());
        QVERIFY(!model.canLeaveEarlier() && !model.canReturnEarlier() && !model.lacksContact());
        model.stepFrom(1);
        model.stepTo(1);
        model.typeDays("2026-05-10", "2026-05-12");
        model.setCall("Somebody");
    }

    void twoWeeksAreShownUntilTheKeeperSaysWhen() {
        Bench bench;
        bench.settle();
        const QAbstractItemModelTester tester(bench.model.lines());
        QCOMPARE(bench.model.fromText(), QString("Friday 15 May"));
        QCOMPARE(bench.model.toText(), QString("Thursday 28 May"));
        QCOMPARE(bench.model.lengthText(), QString("14 days away"));
        QVERIFY(!bench.model.summary().isEmpty());
        QVERIFY2(bench.model.lastMealText().contains("Wednesday 13 May"),
                 qPrintable(bench.model.lastMealText()));
        QVERIFY(bench.model.lines()->count() > 0);
        QVERIFY(headingsOf(bench.model).first().startsWith("Before you go"));
        // 118 moulted four days ago and is still soft.
        QVERIFY(headingsOf(bench.model).contains("What stays shut"));
    }

    void theDaysCanBeMovedAndTyped() {
        Bench bench;
        bench.settle();
        for (int day = 0; day < 7; ++day) bench.model.stepFrom(-1);
        bench.settle();
        QCOMPARE(bench.model.fromText(), QString("Friday 8 May"));
        QVERIFY(!bench.model.canLeaveEarlier());
        QVERIFY(bench.model.lastMealText().contains("Don't feed any more"));
        bench.model.stepFrom(-1);
        QCOMPARE(bench.model.fromTyped(), QString("2026-05-08"));
        bench.model.stepTo(1);
        QCOMPARE(bench.model.lengthText(), QString("15 days away"));

        bool isKept = false;
        connect(&bench.model, &AwayModel::daysKept, this, [&] { isKept = true; });
        bench.model.typeDays("2026-05-20", "2026-05-10");
        QVERIFY(bench.model.daysError().contains("before you leave"));
        bench.model.typeDays("next week", "2026-05-10");
        QVERIFY(bench.model.daysError().contains("next week"));
        QVERIFY(!isKept);
        bench.model.clearDaysError();
        bench.model.typeDays("2026-06-01", " 2026-06-03 ");
        QVERIFY(isKept && bench.model.daysError().isEmpty());
        bench.settle();
        QCOMPARE(bench.model.toText(), QString("Wednesday 3 June"));
    }

    void theSheetSaysWhomToCallAndWhatStaysShut() {
        Bench bench;
        bench.settle();
        QVERIFY(bench.model.lacksContact());
        bench.model.setCall("The neighbour, 12");
        bench.settle();
        QCOMPARE(bench.model.call(), QString("The neighbour, 12"));
        QTRY_VERIFY(bench.model.pageCount() > 0);
        bench.settle();
        QString words;
        for (int page = 0; page < bench.model.pageCount(); ++page) {
            bench.model.setPage(page);
            words += wordsOf(bench.model.sheet());
        }
        QVERIFY(words.contains("The neighbour, 12") && words.contains("medical care"));
        QVERIFY(words.contains("Do not open") && words.contains("118"));
        QVERIFY(words.contains("estimates"));
        QVERIFY(!words.contains("[") && !words.contains("331"));
        bench.save();
        QVERIFY(bench.saved("Kiln-Row-sitter-2026-05-15.pdf").startsWith("%PDF-"));
    }
};

QTEST_MAIN(TestAway)
#include "tst_away.moc"
