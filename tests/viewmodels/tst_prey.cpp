// Feeders on the page: counted by taps, bought, priced; what will be used and what to buy.
#include <QAbstractItemModelTester>

#include "viewmodels/desk_fixture.h"
#include "viewmodels/preymodel.h"

using namespace burrow;
using namespace burrow::test;

namespace {

class Bench {
public:
    Bench() {
        at.openRoom();
        model.setDesk(&at.desk);
        settle();
    }
    void settle() {
        at.settle();
        QTRY_VERIFY(!model.isWaiting());
    }
    [[nodiscard]] const LineRow* stock(const char* key) {
        for (const auto& row : model.stock()->rows()) {
            if (row.key == QLatin1String(key)) return &row;
        }
        return nullptr;
    }
    void keep(const char* size, const char* count, const char* price) {
        model.choose(size);
        model.keep(count, price);
        settle();
    }

    DeskFixture at;
    PreyModel model;
};

}  // namespace

class TestPrey : public QObject {
    Q_OBJECT

private slots:
    void isThereBeforeTheDesk() {
        PreyModel model;
        QVERIFY(model.spans().isEmpty() && model.summary().isEmpty() && model.costText().isEmpty());
        QVERIFY(model.outlookText().isEmpty() && model.chosenName().isEmpty());
        QVERIFY(model.chosenCount().isEmpty() && model.chosenPrice().isEmpty());
        model.step("cricket.small", 1);
        model.buy("x");
        model.choose("cricket.small");
        model.keep("1", "1");
        model.forget();
    }

    void saysWhatWillBeUsedAndBought() {
        Bench bench;
        const QAbstractItemModelTester uses(bench.model.uses());
        const QAbstractItemModelTester purchases(bench.model.purchases());
        QCOMPARE(bench.model.stock()->count(), 0);
        QVERIFY(bench.model.uses()->count() > 0);
        QVERIFY(bench.model.purchases()->count() > 0);
        QVERIFY(bench.model.outlookText().contains("80 of 100"));
        QVERIFY(bench.model.outlookText().contains("estimate"));
        QCOMPARE(bench.model.costText(), QString("No prices yet"));
        const auto first = bench.model.purchases()->rows().front();
        QVERIFY(!first.heading.isEmpty() && !first.sub.isEmpty() && first.estimated);
        const auto before = bench.model.outlookText();
        bench.model.setSpan(2);
        bench.at.settle();
        QVERIFY(bench.model.outlookText() != before);
    }

    void isCountedByTaps() {
        Bench bench;
        const QAbstractItemModelTester stock(bench.model.stock());
        const QAbstractItemModelTester sizes(bench.model.sizes());
        const int others = bench.model.sizes()->count();
        bench.keep("cricket.small", "40", "");
        QVERIFY(bench.stock("cricket.small") != nullptr);
        QCOMPARE(bench.stock("cricket.small")->value, QString("40"));
        QCOMPARE(bench.model.sizes()->count(), others - 1);
        // Three taps before the first is on the device.
        {
            const auto held = bench.at.holdBook();
            for (int tap = 0; tap < 3; ++tap) bench.model.step("cricket.small", -1);
            QCOMPARE(bench.stock("cricket.small")->value, QString("37"));
        }
        bench.settle();
        QCOMPARE(bench.stock("cricket.small")->value, QString("37"));
        QVERIFY(bench.at.desk.doneText().contains("37"));
        bench.at.desk.undo();
        bench.settle();
        QCOMPARE(bench.stock("cricket.small")->value, QString("38"));
        bench.model.step("no.size", 1);
    }

    void aPriceGivesACost() {
        Bench bench;
        const auto size = bench.model.purchases()->rows().front().key.section(' ', 1);
        bench.keep(qPrintable(size), "", "4,50/100");
        bench.model.setSpan(1);
        QTRY_VERIFY(bench.model.purchases()->rows().front().value.contains("4.50"));
        // Two packs, and another kind that has no price.
        QCOMPARE(bench.model.costText(), QString("9.00 in all, without one that has no price"));
        bench.model.choose(size);
        QCOMPARE(bench.model.chosenPrice(), QString("4.50 for 100"));
        QVERIFY(!bench.model.isChosenInStock());

        // A whole pack comes home.
        bench.model.buy(bench.model.purchases()->rows().front().key);
        bench.settle();
        QCOMPARE(bench.stock(qPrintable(size))->value, QString("100"));
        QTRY_VERIFY(bench.model.purchases()->count() == 0 ||
                    bench.model.purchases()->rows().front().key.section(' ', 1) != size);
    }

    void whatCannotBeIsSaid() {
        Bench bench;
        bool isKept = false;
        connect(&bench.model, &PreyModel::kept, this, [&] { isKept = true; });
        bench.keep("roach.large", "many", "cheap");
        QVERIFY(bench.model.countError().contains("whole number"));
        QVERIFY(bench.model.priceError().contains("4.50 for 100"));
        QVERIFY(!isKept);
        bench.model.clearErrors();
        QVERIFY(bench.model.countError().isEmpty());
        bench.keep("roach.large", "12", "");
        QVERIFY(isKept && bench.model.isChosenInStock());
        bench.model.forget();
        bench.settle();
        QVERIFY(!bench.model.isChosenInStock());
        // Nothing differs: nothing is written.
        const int serial = bench.at.desk.doneSerial();
        bench.keep("roach.large", "", "");
        QCOMPARE(bench.at.desk.doneSerial(), serial);
    }
};

QTEST_GUILESS_MAIN(TestPrey)
#include "tst_prey.moc"
