// Leftovers, water, damp, looking in, and the list of a day. Every interval is common practice, no
// source.
#include <QTest>

#include "support/husbandry.h"

using namespace burrow;
using namespace burrow::test;

namespace {

const Rules& rules() {
    static const auto shared = shippedRules();
    return shared;
}

const Profile* profileOf(const char* species) {
    static const auto shared = shippedProfiles();
    return shared.find(species);
}

Answer answer(const Record& record, Care care, std::string_view today,
              const Profile* profile = nullptr) {
    return planFor(record.input(profile), rules(), on(today)).of(care);
}

QString reason(const Answer& given, std::string_view today) {
    return QString::fromStdString(englishWords().say(given.reason, day(today)));
}

QString window(const Answer& given) {
    if (!given.window) return "none";
    return QString::fromStdString(isoDate(given.window->opens) + " " + isoDate(given.window->best) +
                                  " " + isoDate(given.window->late));
}

}  // namespace

class TestCare : public QObject {
    Q_OBJECT

private slots:
    void leftoversAreDueTheDayAfter() {
        Record record;
        QCOMPARE(reason(answer(record, Care::leftovers, "2026-05-08"), "2026-05-08"),
                 QString("No prey was offered yet"));
        record.refused("2026-05-07");
        const auto sameDay = answer(record, Care::leftovers, "2026-05-07");
        QCOMPARE(sameDay.state, State::waiting);
        QCOMPARE(reason(sameDay, "2026-05-07"),
                 QString("Refused the cricket today, take out what remains Friday"));
        const auto dayAfter = answer(record, Care::leftovers, "2026-05-08");
        QCOMPARE(dayAfter.state, State::due);
        QCOMPARE(window(dayAfter), QString("2026-05-08 2026-05-08 2026-05-08"));
        QCOMPARE(reason(dayAfter, "2026-05-08"), QString("Refused the cricket 1 day ago"));
        record.add("2026-05-08", FactKind::leftoversOut);
        const auto out = answer(record, Care::leftovers, "2026-05-08");
        QCOMPARE(out.state, State::none);
        QCOMPARE(reason(out, "2026-05-08"), QString("No prey was left in there"));
    }

    void anEatenMealLeavesNothing() {
        Record record;
        record.refused("2026-05-07").ate("2026-05-08");
        QCOMPARE(answer(record, Care::leftovers, "2026-05-09").state, State::none);
    }

    void leftoversInWords() {
        Record record;
        FactBody body;
        body.outcome = Outcome::part;
        body.prey = "crickets";
        body.count = 3;
        record.add("2026-05-05", FactKind::offered, body);
        record.offer("2026-05-07", Outcome::leftIn, "");
        QCOMPARE(reason(answer(record, Care::leftovers, "2026-05-08"), "2026-05-08"),
                 QString("Ate part of the crickets 3 days ago"));
        Record other;
        other.offer("2026-05-06", Outcome::leftIn, "");
        QCOMPARE(reason(answer(other, Care::leftovers, "2026-05-08"), "2026-05-08"),
                 QString("Left the prey in there 2 days ago"));
    }

    void theReasonNamesTheOfferThatWasNotTakenOut() {
        Record record;
        record.offer("2026-05-05", Outcome::part, "roach")
            .add("2026-05-06", FactKind::leftoversOut);
        record.offer("2026-05-07", Outcome::refused, "locust");
        QCOMPARE(reason(answer(record, Care::leftovers, "2026-05-08"), "2026-05-08"),
                 QString("Refused the locust 1 day ago"));
    }

    void leftoversAreDueTheSameDayNearAMoult() {
        Record record;
        record.add("2026-05-02", FactKind::premoultSign).refused("2026-05-07");
        const auto given = answer(record, Care::leftovers, "2026-05-07");
        QCOMPARE(given.state, State::due);
        QCOMPARE(window(given), QString("2026-05-07 2026-05-07 2026-05-07"));
        QCOMPARE(reason(given, "2026-05-07"),
                 QString("Refused the cricket today, a moult makes it a danger"));
        Record soft;
        soft.moulted("2026-05-06").offer("2026-05-07", Outcome::leftIn);
        QCOMPARE(answer(soft, Care::leftovers, "2026-05-07").state, State::due);
    }

    // The day of an offer is the keeper's: 23:30 UTC on 7 May is already 8 May in Berlin (CEST,
    // UTC+2).
    void theOfferBelongsToTheKeepersDay() {
        Record record;
        record.refused("2026-05-07");
        record.digest.leftoversSince = Instant{day("2026-05-07").days * std::int64_t{86'400'000} +
                                               (23 * 60 + 30) * std::int64_t{60'000}};
        const PlanDay berlin{day("2026-05-08"), Zone::named("Europe/Berlin").value()};
        const auto given = planFor(record.input(), rules(), berlin).of(Care::leftovers);
        QCOMPARE(given.state, State::waiting);
        QCOMPARE(window(given), QString("2026-05-09 2026-05-09 2026-05-09"));
    }

    void waterByStage_data() {
        QTest::addColumn<double>("span");
        QTest::addColumn<QString>("expected");
        QTest::addColumn<QString>("amount");
        QTest::newRow("sling") << 20.0 << "2026-05-03 2026-05-03 2026-05-04"
                               << "A few drops on the web or the wall";
        QTest::newRow("juvenile") << 60.0 << "2026-05-06 2026-05-07 2026-05-08"
                                  << "Fill the dish";
        QTest::newRow("adult") << 140.0 << "2026-05-06 2026-05-07 2026-05-08"
                               << "Fill the dish";
    }
    void waterByStage() {
        QFETCH(double, span);
        QFETCH(QString, expected);
        QFETCH(QString, amount);
        Record record;
        record.span("2026-04-01", span).add("2026-05-01", FactKind::watered);
        const auto given = answer(record, Care::water, "2026-05-02");
        QCOMPARE(window(given), expected);
        QCOMPARE(given.state, State::waiting);
        QCOMPARE(QString::fromStdString(englishWords().say(*given.amount, day("2026-05-02"))),
                 amount);
        QCOMPARE(answer(record, Care::water, "2026-05-06").state, State::due);
        QVERIFY(reason(answer(record, Care::water, "2026-05-08"), "2026-05-08")
                    .startsWith("Watered 7 days ago, usual gap is "));
    }

    void dampByStageAndSpecies_data() {
        QTest::addColumn<QString>("species");
        QTest::addColumn<double>("span");
        QTest::addColumn<QString>("expected");
        const auto row = [](const char* name, const char* species, double span,
                            const char* expected) {
            QTest::newRow(name) << species << span << expected;
        };
        row("dry sling", "Brachypelma hamorii", 20, "2026-05-08 2026-05-11 2026-05-15");
        row("dry adult", "Brachypelma hamorii", 140, "2026-05-29 2026-06-01 2026-06-05");
        row("moderate adult", "Grammostola pulchra", 160, "2026-05-15 2026-05-18 2026-05-22");
        row("moist adult", "Theraphosa blondi", 250, "2026-05-08 2026-05-09 2026-05-11");
        row("moist sling never later than grown", "Theraphosa blondi", 30,
            "2026-05-08 2026-05-09 2026-05-11");
        row("unknown species", "no such species", 60, "2026-05-15 2026-05-18 2026-05-22");
    }
    void dampByStageAndSpecies() {
        QFETCH(QString, species);
        QFETCH(double, span);
        QFETCH(QString, expected);
        Record record;
        record.span("2026-04-01", span).add("2026-05-01", FactKind::dampened);
        const auto* profile = profileOf(qPrintable(species));
        QCOMPARE(window(answer(record, Care::damp, "2026-05-02", profile)), expected);
    }

    void swampDwellersAreWettedAllOver() {
        auto profile = *profileOf("Theraphosa blondi");
        profile.damp.value = Damp::swamp;
        Record record;
        record.span("2026-04-01", 250).add("2026-05-01", FactKind::dampened);
        const auto given = answer(record, Care::damp, "2026-05-02", &profile);
        QCOMPARE(window(given), QString("2026-05-03 2026-05-04 2026-05-05"));
        QCOMPARE(QString::fromStdString(englishWords().say(*given.amount, day("2026-05-02"))),
                 QString("Wet the ground all over"));
    }

    void neverWateredIsDueAtOnce() {
        Record record;
        record.subject.acquired = day("2026-05-01");
        for (const auto care : {Care::water, Care::damp}) {
            QCOMPARE(answer(record, care, "2026-05-01").state, State::due);
        }
        QCOMPARE(reason(answer(record, Care::water, "2026-05-08"), "2026-05-08"),
                 QString("No water recorded since 1 May"));
    }

    void waterIsNeverHeldBack() {
        Record record;
        record.add("2026-04-20", FactKind::watered).add("2026-04-20", FactKind::dampened);
        record.moulted("2026-05-07");
        QCOMPARE(answer(record, Care::feed, "2026-05-08").state, State::hold);
        QCOMPARE(answer(record, Care::water, "2026-05-08").state, State::due);
        QCOMPARE(answer(record, Care::damp, "2026-05-08").state, State::due);
    }

    void lookInWhenNothingIsLogged_data() {
        QTest::addColumn<double>("span");
        QTest::addColumn<QString>("opens");
        QTest::newRow("sling") << 20.0 << "2026-05-15";
        QTest::newRow("juvenile") << 60.0 << "2026-05-31";
        QTest::newRow("adult") << 140.0 << "2026-06-10";
    }
    void lookInWhenNothingIsLogged() {
        QFETCH(double, span);
        QFETCH(QString, opens);
        Record record;
        record.span("2026-05-01", span);
        QCOMPARE(answer(record, Care::look, isoDate(day(opens.toStdString()) - 1)).state,
                 State::waiting);
        const auto given = answer(record, Care::look, opens.toStdString());
        QCOMPARE(given.state, State::due);
        QVERIFY(reason(given, opens.toStdString()).startsWith("Nothing logged for "));
    }

    void lookInWords() {
        Record record;
        record.span("2026-03-28", 140);
        QCOMPARE(reason(answer(record, Care::look, "2026-05-08"), "2026-05-08"),
                 QString("Nothing logged for 41 days"));
        Record silent;
        silent.subject.acquired = day("2026-05-01");
        QCOMPARE(reason(answer(silent, Care::look, "2026-05-08"), "2026-05-08"),
                 QString("Nothing logged yet. Due 31 May"));
        QCOMPARE(reason(answer(silent, Care::look, "2026-06-08"), "2026-06-08"),
                 QString("Nothing logged yet"));
    }

    void whatIsNotHereIsNotPlanned_data() {
        QTest::addColumn<QString>("standing");
        QTest::addColumn<QString>("expected");
        QTest::newRow("on loan") << "on_loan"
                                 << "Away on loan";
        QTest::newRow("dead") << "dead"
                              << "Died";
        QTest::newRow("sold") << "sold"
                              << "Sold";
        QTest::newRow("given") << "given"
                               << "Given away";
    }
    void whatIsNotHereIsNotPlanned() {
        QFETCH(QString, standing);
        QFETCH(QString, expected);
        Record record;
        record.ate("2026-03-01").offer("2026-03-02", Outcome::leftIn);
        record.subject.standing = parseTerm<Standing>(standing.toStdString()).value();
        for (const auto care : allCare) {
            const auto given = answer(record, care, "2026-05-08");
            QCOMPARE(given.state, State::none);
            QVERIFY(!given.window);
            QCOMPARE(reason(given, "2026-05-08"), expected);
        }
        record.digest.standingSince = day("2026-05-02");
        QVERIFY(reason(answer(record, Care::feed, "2026-05-08"), "2026-05-08").endsWith("2 May"));
    }

    void aGroupOfNoneIsNotPlanned() {
        Record record;
        record.subject.form = Form::lot;
        record.subject.headcount = 0;
        QCOMPARE(reason(answer(record, Care::feed, "2026-05-08"), "2026-05-08"),
                 QString("None are left on the books"));
        record.subject.headcount = 1;
        QCOMPARE(answer(record, Care::feed, "2026-05-08").state, State::due);
    }

    void theListWalksTheShelvesWithQuarantineLast() {
        struct Tub {
            const char* number;
            const char* place;
            bool quarantined;
        };
        const std::vector<Tub> tubs{{"12", "B", false},     {"2", "A / 10", false},
                                    {"31", "A / 2", false}, {"5", "A / 2", true},
                                    {"4", "A / 2", false},  {"", "C", false}};
        std::vector<Record> records(tubs.size());
        std::vector<PlanInput> inputs;
        for (std::size_t i = 0; i < tubs.size(); ++i) {
            records[i].subject.number = tubs[i].number;
            records[i].subject.quarantined = tubs[i].quarantined;
            records[i].place = Place::parse(tubs[i].place);
            inputs.push_back(records[i].input());
        }
        const std::vector<std::size_t> expected{4, 2, 1, 0, 5, 3};
        QCOMPARE(walkOrder(inputs), expected);
    }

    void theListShowsWhatIsDueAndEveryHeldMeal() {
        Record hungry;
        hungry.subject.number = "1";
        hungry.span("2026-03-01", 60).offer("2026-04-01", Outcome::part);
        hungry.add("2026-05-07", FactKind::watered).add("2026-05-07", FactKind::dampened);
        Record soft;
        soft.subject.number = "2";
        soft.moulted("2026-05-07").add("2026-05-07", FactKind::watered);
        Record fed;
        fed.subject.number = "3";
        fed.ate("2026-05-07").add("2026-05-07", FactKind::watered);
        fed.add("2026-05-07", FactKind::dampened);
        Record sold;
        sold.subject.standing = Standing::sold;
        const std::vector<PlanInput> inputs{sold.input(), fed.input(), soft.input(),
                                            hungry.input()};
        QStringList lines;
        for (const auto& shown : dueList(inputs, rules(), on("2026-05-08"))) {
            const auto& subject = inputs[shown.input].subject;
            lines << QString::fromStdString(
                subject.number + " " + englishWords().say(shown.answer.verb(subject.form), {}));
        }
        const QStringList expected{"1 Take leftovers out", "1 Feed", "2 Hold", "2 Dampen"};
        QCOMPARE(lines, expected);
    }

    void theListOfNobodyIsEmpty() { QVERIFY(dueList({}, rules(), on("2026-05-08")).empty()); }
};

QTEST_APPLESS_MAIN(TestCare)
#include "tst_husbandry_care.moc"
