// The tables of numbers, a row of them changed, undone and shipped again: by real clicks on the real pages.
#include <QtTest>

#include "pages/stage.h"

using namespace burrow::test;

namespace {

const QVariantMap clearly{{"row", "sexing/moult/7_to_11.clearly"}};

/// Of the keeper's own, in the book.
int ownNumbers(Stage& stage) {
    int count = 0;
    for (const auto& table : stage.desk->knowledge().numbers.list(stage.desk->room()->info())) {
        count += table.ownNumbers();
    }
    return count;
}

}  // namespace

class NumberPages : public QObject {
    Q_OBJECT

private slots:
    void theRulesLeadToTheTables() {
        Stage stage;
        stage.go("RulesPage");
        QVERIFY2(stage.has("numbers, all as shipped"), qPrintable(stage.words()));
        stage.click("The tables of numbers");
        QCOMPARE(stage.page(), QString("NumbersPage"));
        QVERIFY2(stage.has("Air: alarms"), qPrintable(stage.words()));
        stage.click(stage.first("RuleStrip"));
        QCOMPARE(stage.page(), QString("NumberPage"));
        QVERIFY(stage.has("Air: alarms"));
        stage.click("Back");
        stage.click("Back");
        QCOMPARE(stage.page(), QString("RulesPage"));
    }

    void aNumberIsChangedUndoneAndShippedAgain() {
        Stage stage;
        stage.go("NumbersPage");
        stage.go("NumberPage", clearly);
        QVERIFY2(stage.has("Shipped 12"), qPrintable(stage.words()));
        QVERIFY(!stage.has("Shipped again"));
        stage.fill("Where a plate shows", "10");
        stage.click("Keep the change");
        QTRY_COMPARE(stage.page(), QString("NumbersPage"));
        QCOMPARE(ownNumbers(stage), 1);
        QVERIFY2(stage.has("one of them your own"), qPrintable(stage.words()));
        QCOMPARE(stage.desk->doneText(), QString("changed 1 number"));
        stage.click("Undo");
        QTRY_COMPARE(ownNumbers(stage), 0);
        QVERIFY(stage.has("all as shipped"));
        stage.go("NumberPage", clearly);
        stage.fill("Where a plate shows", "10");
        stage.fill("Where none shows", "0.2");
        stage.click("Keep the change");
        QTRY_COMPARE(ownNumbers(stage), 2);
        stage.go("NumberPage", clearly);
        stage.click("Shipped again");
        QTRY_COMPARE(ownNumbers(stage), 0);
        QTRY_COMPARE(stage.page(), QString("NumbersPage"));
    }

    void whatCantStandThereIsSaid() {
        Stage stage;
        stage.go("NumberPage", clearly);
        stage.fill("Where a plate shows", "plenty");
        stage.click("Keep the change");
        QCOMPARE(stage.page(), QString("NumberPage"));
        QVERIFY2(stage.has("\"plenty\" is no number"), qPrintable(stage.words()));
        stage.fill("Where a plate shows", "-5");
        stage.click("Keep the change");
        QVERIFY2(stage.has("-5 can't stand here"), qPrintable(stage.words()));
        QCOMPARE(ownNumbers(stage), 0);
        stage.click("Back");
        QCOMPARE(stage.page(), QString("NumberPage"));  // not left by one touch
        stage.click("Back");
        QVERIFY(stage.page() != QString("NumberPage"));
    }
};

QTEST_MAIN(NumberPages)
#include "tst_number_pages.moc"
