// When food is due and when it is held back, with the sentence a keeper reads. Every interval is
// common practice, no source.
#include <QTest>

#include "support/husbandry.h"

using namespace burrow;
using namespace burrow::test;

namespace {

const Rules& rules() {
    static const auto shared = shippedRules();
    return shared;
}

Answer feed(const Record& record, std::string_view today) {
    return planFor(record.input(), rules(), on(today)).of(Care::feed);
}

QString line(const Record& record, std::string_view today) {
    static const auto words = englishWords();
    const auto answer = feed(record, today);
    return QString::fromStdString(words.say(answer.verb(record.subject.form), day(today)) + ". " +
                                  words.say(answer.reason, day(today)));
}

QString window(const Answer& answer) {
    if (!answer.window) return "none";
    return QString::fromStdString(isoDate(answer.window->opens) + " " +
                                  isoDate(answer.window->best) + " " +
                                  isoDate(answer.window->late));
}

/// A record of one animal of that leg span, sized long before anything else happened.
Record animal(double span) {
    Record record;
    record.span("2020-01-01", span);
    return record;
}

constexpr double slingSpan = 20;
constexpr double juvenileSpan = 60;
constexpr double adultSpan = 140;

}  // namespace

Q_DECLARE_METATYPE(burrow::State)

class TestFeeding : public QObject {
    Q_OBJECT

private slots:
    void theIntervalFollowsTheStage_data() {
        QTest::addColumn<double>("span");
        QTest::addColumn<bool>("mature");
        QTest::addColumn<QString>("expected");
        QTest::newRow("smallest") << 11.0 << false << "2026-05-04 2026-05-04 2026-05-05";
        QTest::newRow("sling") << slingSpan << false << "2026-05-06 2026-05-07 2026-05-08";
        QTest::newRow("juvenile") << juvenileSpan << false << "2026-05-08 2026-05-09 2026-05-11";
        QTest::newRow("adult") << adultSpan << false << "2026-05-11 2026-05-13 2026-05-15";
        QTest::newRow("mature male") << adultSpan << true << "2026-05-15 2026-05-18 2026-05-22";
    }
    void theIntervalFollowsTheStage() {
        QFETCH(double, span);
        QFETCH(bool, mature);
        QFETCH(QString, expected);
        auto record = animal(span);
        record.subject.mature = mature;
        record.subject.sex = mature ? Sex::male : Sex::unknown;
        record.ate("2026-05-01");
        QCOMPARE(window(feed(record, "2026-05-02")), expected);
    }

    void dueFromTheDayItOpens() {
        auto record = animal(juvenileSpan);
        record.ate("2026-05-01");
        QCOMPARE(feed(record, "2026-05-07").state, State::waiting);
        QCOMPARE(line(record, "2026-05-07"), QString("Wait. Ate 6 days ago. Opens Friday"));
        QCOMPARE(feed(record, "2026-05-08").state, State::due);
        QCOMPARE(line(record, "2026-05-10"), QString("Feed. Ate 9 days ago, usual gap is 8"));
        QCOMPARE(line(record, "2026-05-01"), QString("Wait. Ate today. Opens 8 May"));
    }

    void aPartOfAMealIsAMeal() {
        auto record = animal(juvenileSpan);
        record.refused("2026-04-20").offer("2026-05-01", Outcome::part);
        QCOMPARE(window(feed(record, "2026-05-02")), QString("2026-05-08 2026-05-09 2026-05-11"));
        QCOMPARE(line(record, "2026-05-09"),
                 QString("Feed. Ate part of a meal 8 days ago, usual gap is 8"));
    }

    void neverFedIsDueAtOnce() {
        Record record;
        QCOMPARE(line(record, "2026-05-08"), QString("Feed. No meal recorded since 8 May"));
        record.add("2026-05-02", FactKind::watered);
        QCOMPARE(line(record, "2026-05-08"), QString("Feed. No meal recorded since 2 May"));
        record.subject.hatched = day("2026-04-02");
        QCOMPARE(line(record, "2026-05-08"), QString("Feed. No meal recorded since 2 April"));
        record.subject.acquired = day("2026-04-20");
        QCOMPARE(line(record, "2026-05-08"), QString("Feed. No meal recorded since 20 April"));
        record.subject.acquired = day("2026-06-01");
        QCOMPARE(feed(record, "2026-05-08").state, State::due);
    }

    void aRefusalIsTriedAgainSoon_data() {
        QTest::addColumn<double>("span");
        QTest::addColumn<QString>("expected");
        QTest::newRow("sling") << slingSpan << "2026-05-03 2026-05-03 2026-05-04";
        QTest::newRow("juvenile") << juvenileSpan << "2026-05-05 2026-05-05 2026-05-06";
        QTest::newRow("adult") << adultSpan << "2026-05-07 2026-05-08 2026-05-09";
    }
    void aRefusalIsTriedAgainSoon() {
        QFETCH(double, span);
        QFETCH(QString, expected);
        auto record = animal(span);
        record.ate("2026-03-01").refused("2026-05-01");
        QCOMPARE(window(feed(record, "2026-05-02")), expected);
        QCOMPARE(line(record, "2026-05-01").left(22), QString("Wait. Refused today. O"));
    }

    void refusalsInTheReason() {
        auto record = animal(juvenileSpan);
        record.ate("2026-04-01").refused("2026-05-01");
        QCOMPARE(line(record, "2026-05-05"), QString("Feed. Refused 4 days ago, offer again"));
        // The second time it takes half as long again: 4 to 5 days become 6 to 8.
        record.refused("2026-05-05");
        QCOMPARE(window(feed(record, "2026-05-06")), QString("2026-05-11 2026-05-12 2026-05-13"));
        QCOMPARE(line(record, "2026-05-11"),
                 QString("Feed. Refused twice, offer something smaller"));
    }

    void refusingBetweenMealsDoesNotBringTheNextForward() {
        auto record = animal(adultSpan);
        record.ate("2026-05-01").refused("2026-05-02");
        QCOMPARE(window(feed(record, "2026-05-03")), QString("2026-05-11 2026-05-13 2026-05-15"));
    }

    void threeRefusalsInARowAreALikelyPremoult_data() {
        QTest::addColumn<double>("span");
        QTest::addColumn<QString>("opens");
        QTest::newRow("sling") << slingSpan << "2026-05-08";
        QTest::newRow("juvenile") << juvenileSpan << "2026-05-15";
        QTest::newRow("adult") << adultSpan << "2026-05-22";
    }
    void threeRefusalsInARowAreALikelyPremoult() {
        QFETCH(double, span);
        QFETCH(QString, opens);
        auto record = animal(span);
        record.ate("2026-04-01").refused("2026-04-20").refused("2026-04-25").refused("2026-05-01");
        QCOMPARE(feed(record, "2026-05-01").state, State::hold);
        QVERIFY(window(feed(record, "2026-05-02")).startsWith(opens));
        const auto last = isoDate(day(opens.toStdString()) - 1);
        QCOMPARE(feed(record, last).state, State::hold);
        QCOMPARE(feed(record, opens.toStdString()).state, State::due);
        QCOMPARE(line(record, opens.toStdString()),
                 QString("Feed. Refused 3 times, offer something smaller"));
    }

    void likelyPremoultInWords() {
        auto record = animal(juvenileSpan);
        record.refused("2026-04-20").refused("2026-04-25").refused("2026-05-01");
        QCOMPARE(
            line(record, "2026-05-02"),
            QString("Hold. Refused 3 times, a moult is likely. Water only, offer again 15 May"));
        record.ate("2026-05-03");
        QCOMPARE(feed(record, "2026-05-04").state, State::waiting);
    }

    void aMatureMaleThatRefusesIsNotInPremoult() {
        auto record = animal(adultSpan);
        record.subject.mature = true;
        record.refused("2026-04-20").refused("2026-04-25").refused("2026-05-01");
        // The third time it takes twice as long: 6 to 8 days become 12 to 16.
        QCOMPARE(window(feed(record, "2026-05-07")), QString("2026-05-13 2026-05-15 2026-05-17"));
        QCOMPARE(feed(record, "2026-05-13").state, State::due);
    }

    void aSignOfPremoultHoldsFood_data() {
        QTest::addColumn<double>("span");
        QTest::addColumn<QString>("opens");
        QTest::newRow("sling") << slingSpan << "2026-05-16";
        QTest::newRow("juvenile") << juvenileSpan << "2026-05-30";
        QTest::newRow("adult") << adultSpan << "2026-06-13";
    }
    void aSignOfPremoultHoldsFood() {
        QFETCH(double, span);
        QFETCH(QString, opens);
        auto record = animal(span);
        record.ate("2026-04-01").add("2026-05-02", FactKind::premoultSign);
        QCOMPARE(line(record, "2026-05-08"), QString("Hold. Premoult since 2 May, water only"));
        QVERIFY(window(feed(record, "2026-05-08")).startsWith(opens));
        QVERIFY(!feed(record, "2026-05-08").amount);
        QCOMPARE(feed(record, isoDate(day(opens.toStdString()) - 1)).state, State::hold);
        QCOMPARE(feed(record, opens.toStdString()).state, State::due);
    }

    void aPremoultWithoutAMoultIsTriedWithCare() {
        auto record = animal(slingSpan);
        record.ate("2026-04-01").add("2026-05-02", FactKind::premoultSign);
        QCOMPARE(
            line(record, "2026-05-16"),
            QString("Feed. Premoult since 2 May but no moult, offer something small and killed"));
        record.ate("2026-05-16");
        QCOMPARE(line(record, "2026-05-22"), QString("Feed. Ate 6 days ago, usual gap is 6"));
    }

    void hardeningHoldsFood_data() {
        QTest::addColumn<double>("span");
        QTest::addColumn<QString>("opens");
        QTest::newRow("sling") << slingSpan << "2026-05-06";
        QTest::newRow("juvenile") << juvenileSpan << "2026-05-11";
        QTest::newRow("adult") << adultSpan << "2026-05-15";
    }
    void hardeningHoldsFood() {
        QFETCH(double, span);
        QFETCH(QString, opens);
        auto record = animal(span);
        record.ate("2026-04-01").moulted("2026-05-01");
        QCOMPARE(feed(record, "2026-05-01").state, State::hold);
        QCOMPARE(feed(record, isoDate(day(opens.toStdString()) - 1)).state, State::hold);
        QCOMPARE(feed(record, opens.toStdString()).state, State::due);
        QVERIFY(window(feed(record, "2026-05-02")).startsWith(opens));
    }

    void hardeningInWords() {
        auto record = animal(adultSpan);
        record.moulted("2026-05-04");
        QCOMPARE(line(record, "2026-05-08"),
                 QString("Hold. 4 days since moult, still hardening. Opens 18 May"));
        QCOMPARE(line(record, "2026-05-14"), QString("Hold. 10 days since moult, still hardening. "
                                                     "Opens Monday, or when the fangs are black"));
        QCOMPARE(line(record, "2026-05-04"),
                 QString("Hold. Moulted today, soft and easily hurt. Opens 18 May"));
        QCOMPARE(line(record, "2026-05-18"), QString("Feed. 14 days since moult, not fed since"));
    }

    void blackFangsOpenItSooner() {
        auto record = animal(adultSpan);
        record.moulted("2026-05-04").add("2026-05-12", FactKind::fangsBlack);
        QCOMPARE(feed(record, "2026-05-11").state, State::hold);
        QCOMPARE(line(record, "2026-05-12"),
                 QString("Feed. Fangs black, 8 days since moult, not fed since"));
        record.ate("2026-05-12");
        QCOMPARE(feed(record, "2026-05-13").state, State::waiting);
        record.moulted("2026-06-20");
        QCOMPARE(feed(record, "2026-07-01").state, State::hold);
    }

    void hardeningGoesBeforeEverything() {
        auto record = animal(adultSpan);
        record.refused("2026-04-20").refused("2026-04-25").refused("2026-05-01");
        record.add("2026-05-01", FactKind::premoultSign).moulted("2026-05-04");
        record.offer("2026-05-05", Outcome::leftIn);
        QVERIFY(line(record, "2026-05-06").startsWith("Hold. 2 days since moult"));
        record.ate("2026-05-06");
        QVERIFY(line(record, "2026-05-07").startsWith("Hold. 3 days since moult"));
    }

    void preyLeftInComesOutFirst() {
        auto record = animal(juvenileSpan);
        record.ate("2026-04-01").offer("2026-05-01", Outcome::leftIn);
        QCOMPARE(line(record, "2026-05-08"),
                 QString("Wait. Prey was left in 7 days ago, take it out first"));
        record.add("2026-05-08", FactKind::leftoversOut);
        QCOMPARE(line(record, "2026-05-08"), QString("Feed. Left uneaten 7 days ago, offer again"));
        QCOMPARE(line(record, "2026-05-02"),
                 QString("Wait. Left uneaten 1 day ago. Opens Tuesday"));
    }

    void whatWasHeldBackIsWantedAtOnce() {
        auto record = animal(slingSpan);
        record.ate("2026-04-01").add("2026-05-02", FactKind::premoultSign);
        QCOMPARE(window(feed(record, "2026-05-15")), QString("2026-05-16 2026-05-16 2026-05-22"));
        QCOMPARE(window(feed(record, "2026-05-16")), QString("2026-05-16 2026-05-16 2026-05-22"));
    }

    void aMealOnTheDayOfTheMoultCounts() {
        auto record = animal(slingSpan);
        record.moulted("2026-05-01").ate("2026-05-01");
        // It fills up after a moult: 5 to 7 days become 4 to 6.
        QCOMPARE(line(record, "2026-05-06"), QString("Feed. Ate 5 days ago, usual gap is 5"));
    }

    void oneSoftMemberDoesNotStarveTheGroup() {
        auto record = animal(juvenileSpan);
        record.subject.form = Form::group;
        record.subject.headcount = 5;
        record.ate("2026-05-01").moulted("2026-05-07");
        QCOMPARE(
            line(record, "2026-05-08"),
            QString("Feed the group. One moulted 1 day ago and may be soft, offer killed prey"));
        QCOMPARE(line(record, "2026-05-07").left(5), QString("Wait."));
        record.add("2026-05-08", FactKind::premoultSign);
        QCOMPARE(line(record, "2026-05-18"),
                 QString("Feed the group. One in premoult since 8 May, offer killed prey"));
        record.refused("2026-05-18").refused("2026-05-22").refused("2026-05-26");
        QCOMPARE(window(feed(record, "2026-05-30")), QString("2026-06-03 2026-06-04 2026-06-05"));
        QCOMPARE(feed(record, "2026-06-03").state, State::due);
    }

    void quarantineDoesNotStopFeeding() {
        auto record = animal(juvenileSpan);
        record.ate("2026-04-01");
        const auto before = feed(record, "2026-05-08");
        record.subject.quarantined = true;
        QVERIFY(feed(record, "2026-05-08") == before);
    }

    void aDayIsACivilDay_data() {
        QTest::addColumn<QString>("meal");
        QTest::addColumn<QString>("expected");
        QTest::newRow("over 29 February") << "2024-02-25"
                                          << "2024-03-03 2024-03-04 2024-03-06";
        QTest::newRow("no 29 February") << "2026-02-25"
                                        << "2026-03-04 2026-03-05 2026-03-07";
        QTest::newRow("over the year's end") << "2025-12-28"
                                             << "2026-01-04 2026-01-05 2026-01-07";
        QTest::newRow("clocks forward") << "2026-03-27"
                                        << "2026-04-03 2026-04-04 2026-04-06";
    }
    void aDayIsACivilDay() {
        QFETCH(QString, meal);
        QFETCH(QString, expected);
        auto record = animal(juvenileSpan);
        record.ate(meal.toStdString());
        QCOMPARE(window(feed(record, meal.toStdString())), expected);
    }

    void theKeepersOwnIntervalIsUsed() {
        auto record = animal(juvenileSpan);
        record.ate("2026-05-01");
        const std::vector<std::pair<std::string, std::string>> mine{
            {"feed.interval.juvenile", "3-5"}};
        const auto own = rules().with(mine).value();
        QCOMPARE(window(planFor(record.input(), own, on("2026-05-02")).of(Care::feed)),
                 QString("2026-05-04 2026-05-05 2026-05-06"));
    }
};

QTEST_APPLESS_MAIN(TestFeeding)
#include "tst_husbandry_feeding.moc"
