// The evenings to come, and the keeper's feeding days.
#include <QAbstractItemModelTester>

#include "viewmodels/desk_fixture.h"
#include "viewmodels/eveningsmodel.h"

using namespace burrow;
using namespace burrow::test;

namespace {

class Bench {
public:
    Bench() {
        at.openRoom();
        model.setDesk(&at.desk);
        at.settle();
    }
    [[nodiscard]] QStringList headings() {
        QStringList all;
        for (const auto& row : model.lines()->rows()) {
            if (!row.heading.isEmpty()) all.append(row.heading);
        }
        return all;
    }
    void feedOnlyOn(int shown) {
        for (int day = 0; day < 7; ++day) {
            if (day != shown) model.toggleDay(day);
        }
        at.settle();
    }

    DeskFixture at;
    EveningsModel model;
};

constexpr int friday = 4;  // from Monday

}  // namespace

class TestEvenings : public QObject {
    Q_OBJECT

private slots:
    void isThereBeforeTheDesk() {
        EveningsModel model;
        QVERIFY(model.weekdays().isEmpty() && model.why().isEmpty() && model.summary().isEmpty());
        QVERIFY(model.mostText().isEmpty() && model.daysText().isEmpty());
        model.toggleDay(0);
        model.stepMost(1);
    }

    void everyoneStandsUnderTheirEvening() {
        Bench bench;
        const QAbstractItemModelTester tester(bench.model.lines());
        QVERIFY(!bench.model.isWaiting());
        QVERIFY(bench.model.lines()->count() > 0);
        QVERIFY(!bench.headings().isEmpty());
        QVERIFY2(bench.model.why().contains("fewer can't"), qPrintable(bench.model.why()));
        for (const auto& row : bench.model.lines()->rows()) {
            // Who was sold is not fed any more.
            QVERIFY(row.tag != "331");
            QVERIFY(!row.value.isEmpty() && !row.subject.isEmpty());
        }
        QCOMPARE(bench.model.daysText(), QString("Every day, no limit to an evening"));
    }

    void onlyFridaysGivesOnlyFridays() {
        Bench bench;
        bench.feedOnlyOn(friday);
        QCOMPARE(bench.model.weekdays()[friday].toMap()["on"].toBool(), true);
        QCOMPARE(bench.model.weekdays()[0].toMap()["on"].toBool(), false);
        QVERIFY(bench.model.daysText().startsWith("Fri,"));
        // The last day stays: without any nobody would be fed.
        bench.model.toggleDay(friday);
        bench.at.settle();
        QCOMPARE(bench.model.weekdays()[friday].toMap()["on"].toBool(), true);
        for (const auto& heading : bench.headings()) {
            QVERIFY2(heading.startsWith("Friday") || heading == "On no feeding day",
                     qPrintable(heading));
        }
        bench.at.desk.undo();
        bench.at.settle();
        QVERIFY(bench.model.daysText().startsWith("Fri, Sun,"));
    }

    void anEveningTakesNoMoreThanItMay() {
        Bench bench;
        QVERIFY(!bench.model.isLimited());
        bench.model.stepMost(-1);
        QVERIFY(!bench.model.isLimited());
        bench.model.stepMost(1);
        bench.model.stepMost(1);
        bench.at.settle();
        QCOMPARE(bench.model.mostText(), QString("at most 10 in one evening"));
        bench.model.stepMost(-1);
        bench.model.stepMost(-1);
        bench.at.settle();
        QVERIFY(!bench.model.isLimited());
    }
};

QTEST_GUILESS_MAIN(TestEvenings)
#include "tst_evenings.moc"
