// What to offer. Every number is common practice, no source.
#include <QTest>

#include "support/husbandry.h"

using namespace burrow;
using namespace burrow::test;

namespace {

const Rules& rules() {
    static const auto shared = shippedRules();
    return shared;
}

PreySuggestion suggested(const Record& record, const char* today = "2026-05-08") {
    const auto input = record.input();
    const auto stage = judgeStage(input, rules(), day(today));
    return suggestPrey(input, stage, closuresOf(input, stage, rules()), rules(), day(today));
}

QString amount(const PreySuggestion& prey) {
    return QString::fromStdString(englishWords().say(prey.amount(), day("2026-05-08")));
}

QString why(const PreySuggestion& prey) {
    return QString::fromStdString(englishWords().say(prey.reason, day("2026-05-08")));
}

}  // namespace

class TestPrey : public QObject {
    Q_OBJECT

private slots:
    void lengthsThatAreSold_data() {
        QTest::addColumn<double>("wanted");
        QTest::addColumn<double>("sold");
        QTest::newRow("below one") << 0.9 << 0.0;
        QTest::newRow("one") << 1.0 << 1.0;
        QTest::newRow("below ten by one") << 9.9 << 9.0;
        QTest::newRow("ten") << 10.0 << 10.0;
        QTest::newRow("above ten by two") << 13.9 << 12.0;
        QTest::newRow("nearly twenty") << 19.9 << 18.0;
        QTest::newRow("above twenty by five") << 24.9 << 20.0;
        QTest::newRow("large") << 45.0 << 45.0;
    }
    void lengthsThatAreSold() {
        QFETCH(double, wanted);
        QFETCH(double, sold);
        QCOMPARE(soldLength(Millimetres{wanted}).value, sold);
    }

    void bySize_data() {
        QTest::addColumn<double>("span");
        QTest::addColumn<QString>("expected");
        QTest::newRow("too small for whole prey") << 7.0 << "1 piece of cricket, 1 mm";
        QTest::newRow("among the smallest") << 11.0 << "1 fruit fly, 2 mm";
        QTest::newRow("sling") << 25.0 << "1 cricket, 5 mm";
        QTest::newRow("juvenile") << 90.0 << "1 cricket, 14 mm";
        QTest::newRow("adult") << 145.0 << "1 cricket, 20 mm";
    }
    void bySize() {
        QFETCH(double, span);
        QFETCH(QString, expected);
        Record record;
        record.span("2026-01-01", span);
        QCOMPARE(amount(suggested(record)), expected);
    }

    void byStageWhereNoSizeIsKnown() {
        Record record;
        QCOMPARE(amount(suggested(record)), QString("1 cricket, 10 mm"));
        QCOMPARE(why(suggested(record)),
                 QString("No size recorded, the usual length for its stage"));
        record.subject.hatched = day("2026-03-01");
        QCOMPARE(amount(suggested(record)), QString("1 cricket, 3 mm"));
    }

    void whatItAteLastIsOfferedAgain_data() {
        QTest::addColumn<QString>("typed");
        QTest::addColumn<QString>("expected");
        QTest::newRow("known feeder") << "Locusts"
                                      << "1 locust, 14 mm";
        QTest::newRow("two words") << "roaches"
                                   << "1 roach, 14 mm";
        QTest::newRow("the keeper's own word") << "red runner"
                                               << "1 red runner, 14 mm";
        QTest::newRow("not said") << ""
                                  << "1 cricket, 14 mm";
        QTest::newRow("never so long") << "fruit flies"
                                       << "1 cricket, 14 mm";
    }
    void whatItAteLastIsOfferedAgain() {
        QFETCH(QString, typed);
        QFETCH(QString, expected);
        Record record;
        record.span("2026-01-01", 90);
        record.offer("2026-04-28", Outcome::ate, typed.toStdString());
        record.offer("2026-05-05", Outcome::refused, "mealworm");
        QCOMPARE(amount(suggested(record)), expected);
    }

    void noFeederIsSuggestedLongerThanItGrows() {
        Record record;
        record.span("2026-01-01", 280);
        QCOMPARE(amount(suggested(record)), QString("1 cricket, 25 mm"));
    }

    void smallerFromTheSecondRefusalOn() {
        Record record;
        record.span("2026-01-01", 90).refused("2026-04-28");
        QCOMPARE(suggested(record).length.value, 14.0);
        record.refused("2026-05-03");
        QCOMPARE(suggested(record).length.value, 8.0);
        QCOMPARE(why(suggested(record)), QString("Smaller, after 2 refusals in a row"));
        record.refused("2026-05-04");
        QCOMPARE(suggested(record).length.value, 5.0);
        record.refused("2026-05-05").refused("2026-05-06");
        QCOMPARE(suggested(record).length.value, 5.0);
        record.ate("2026-05-07");
        QCOMPARE(suggested(record).length.value, 14.0);
    }

    void smallerThanWhatWasRefused() {
        Record record;
        record.span("2026-01-01", 90);
        record.offer("2026-04-28", Outcome::refused, "cricket", Millimetres{7});
        record.offer("2026-05-03", Outcome::refused, "cricket", Millimetres{7});
        QCOMPARE(suggested(record).length.value, 4.0);
    }

    void piecesWhereSmallerWouldBeTooSmall() {
        Record record;
        record.span("2026-01-01", 9).refused("2026-05-01").refused("2026-05-03");
        QCOMPARE(suggested(record).serving, Serving::whole);
        record.refused("2026-05-04");
        QCOMPARE(amount(suggested(record)), QString("1 piece of cricket, 1 mm"));
        QCOMPARE(why(suggested(record)), QString("Too small for whole prey"));
    }

    void groupsShareAndLotsDoNot() {
        Record record;
        record.span("2026-01-01", 35);
        record.subject.form = Form::group;
        record.subject.headcount = 16;
        QCOMPARE(amount(suggested(record)), QString("6 crickets, 5 mm"));
        record.subject.headcount = 1;
        QCOMPARE(suggested(record).count, 1);
        record.subject.form = Form::lot;
        record.subject.headcount = 200;
        QCOMPARE(suggested(record).count, 200);
    }

    void killedWhereAMemberMayBeSoft() {
        Record record;
        record.span("2026-01-01", 60);
        record.subject.form = Form::group;
        record.subject.headcount = 5;
        record.moulted("2026-05-06");
        QCOMPARE(amount(suggested(record)), QString("2 crickets, 9 mm, killed"));
        QCOMPARE(suggested(record, "2026-05-16").serving, Serving::whole);
    }

    void smallAndKilledAfterAPremoultThatLedToNoMoult() {
        Record record;
        record.span("2026-01-01", 90).ate("2026-03-01");
        record.add("2026-03-10", FactKind::premoultSign);
        QCOMPARE(amount(suggested(record)), QString("1 cricket, 8 mm, killed"));
        record.ate("2026-05-01");
        QCOMPARE(amount(suggested(record)), QString("1 cricket, 14 mm"));
    }
};

QTEST_APPLESS_MAIN(TestPrey)
#include "tst_husbandry_prey.moc"
