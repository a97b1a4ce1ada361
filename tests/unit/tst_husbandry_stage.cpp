// Stage and phase. Every threshold is common practice, no source, unless a source stands beside it.
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

StageJudgement judged(const Record& record, const Profile* profile = nullptr) {
    return judgeStage(record.input(profile), rules(), day("2026-05-08"));
}

QString how(const StageJudgement& judgement) {
    return QString::fromStdString(englishWords().say(judgement.how, day("2026-05-08")));
}

}  // namespace

Q_DECLARE_METATYPE(burrow::Stage)

class TestStage : public QObject {
    Q_OBJECT

private slots:
    void bySpan_data() {
        QTest::addColumn<QString>("species");
        QTest::addColumn<double>("span");
        QTest::addColumn<Stage>("stage");
        QTest::addColumn<bool>("smallest");
        const auto row = [](const char* name, const char* species, double span, Stage stage,
                            bool smallest = false) {
            QTest::newRow(name) << species << span << stage << smallest;
        };
        // B. hamorii grows to 130 to 150 mm: a sling below 35, an adult from 105.
        row("smallest", "Brachypelma hamorii", 11, Stage::sling, true);
        row("from 12 mm not the smallest", "Brachypelma hamorii", 12, Stage::sling);
        row("sling", "Brachypelma hamorii", 34.9, Stage::sling);
        row("juvenile", "Brachypelma hamorii", 35, Stage::juvenile);
        row("nearly adult", "Brachypelma hamorii", 104.9, Stage::juvenile);
        row("adult", "Brachypelma hamorii", 105, Stage::adult);
        // A quarter of T. blondi would be 65 mm, but no animal of 40 mm is a sling.
        row("giant at 39", "Theraphosa blondi", 39.9, Stage::sling);
        row("giant at 40", "Theraphosa blondi", 40, Stage::juvenile);
        // A dwarf is an adult at a size where a giant is a juvenile.
        row("dwarf at 50", "Neoholothele incei", 50, Stage::adult);
        row("unknown at 29", "no such species", 29, Stage::sling);
        row("unknown at 30", "no such species", 30, Stage::juvenile);
        row("unknown at 100", "no such species", 100, Stage::adult);
    }
    void bySpan() {
        QFETCH(QString, species);
        QFETCH(double, span);
        QFETCH(Stage, stage);
        QFETCH(bool, smallest);
        Record record;
        record.span("2026-01-01", span);
        const auto judgement = judged(record, profileOf(qPrintable(species)));
        QCOMPARE(judgement.stage, stage);
        QCOMPARE(judgement.smallest, smallest);
        QCOMPARE(judgement.basis, StageBasis::size);
        QVERIFY(!judgement.spanEstimated);
    }

    void aCarapaceGivesAnEstimate() {
        Record record;
        record.carapace("2026-01-01", 24.1);
        const auto judgement = judged(record, profileOf("Brachypelma hamorii"));
        QCOMPARE(judgement.stage, Stage::adult);
        QCOMPARE(judgement.basis, StageBasis::carapace);
        QVERIFY(judgement.spanEstimated);
        QCOMPARE(how(judgement),
                 QString("Adult, about 145 mm by its carapace, of about 140 mm when grown"));
        QCOMPARE(how(judged(record)),
                 QString("Adult by its carapace, about 145 mm, the species is not known here"));
    }

    // O. schioedtei: span 22 cm with a carapace of more than 3 cm (published descriptions), so a
    // ratio above 7.3 would be too large.
    void theCarapaceRatioStaysBelowAPublishedPair() {
        Record record;
        record.carapace("2026-01-01", 30);
        const auto judgement = judged(record, profileOf("Omothymus schioedtei"));
        QVERIFY(judgement.span.value() < Millimetres{220});
        QCOMPARE(judgement.stage, Stage::adult);
    }

    void aCarapaceMeasuredAtALaterMoultReplacesAnOlderSpan() {
        Record record;
        record.span("2025-06-01", 60);
        FactBody moult;
        moult.carapace = Millimetres{15};
        record.add("2026-02-01", FactKind::moulted, moult);
        QCOMPARE(judged(record).span.value().value, 90.0);
        QVERIFY(judged(record).spanEstimated);
        moult.span = Millimetres{82};
        record.add("2026-04-01", FactKind::moulted, moult);
        QCOMPARE(judged(record).span.value().value, 82.0);
        QVERIFY(!judged(record).spanEstimated);
    }

    void maturityGoesBeforeSize() {
        Record record;
        record.span("2026-01-01", 30);
        record.subject.mature = true;
        record.subject.sex = Sex::male;
        QCOMPARE(judged(record).stage, Stage::matureMale);
        QCOMPARE(judged(record).growing(), Stage::adult);
        record.subject.sex = Sex::female;
        QCOMPARE(judged(record).stage, Stage::adult);
        record.subject.mature = false;
        QCOMPARE(judged(record).stage, Stage::juvenile);
    }

    void anUltimateMoultTellsAMatureMale() {
        Record record;
        FactBody moult;
        moult.ultimate = true;
        record.add("2026-01-01", FactKind::moulted, moult);
        QCOMPARE(judged(record).stage, Stage::matureMale);
        QCOMPARE(judged(record).basis, StageBasis::maturity);
        record.subject.form = Form::group;
        QVERIFY(judged(record).stage != Stage::matureMale);
    }

    void byAgeWhereNoSizeIsKnown_data() {
        QTest::addColumn<QString>("hatched");
        QTest::addColumn<Stage>("stage");
        QTest::newRow("newly hatched") << "2026-05-01" << Stage::sling;
        QTest::newRow("364 days") << "2025-05-09" << Stage::sling;
        QTest::newRow("365 days") << "2025-05-08" << Stage::juvenile;
        QTest::newRow("1094 days over 29 February") << "2023-05-10" << Stage::juvenile;
        QTest::newRow("1095 days over 29 February") << "2023-05-09" << Stage::adult;
        QTest::newRow("hatched after today") << "2026-06-01" << Stage::sling;
    }
    void byAgeWhereNoSizeIsKnown() {
        QFETCH(QString, hatched);
        QFETCH(Stage, stage);
        Record record;
        record.subject.hatched = day(hatched.toStdString());
        QCOMPARE(judged(record).stage, stage);
        QCOMPARE(judged(record).basis, StageBasis::age);
    }

    void aJuvenileWhereNothingIsKnown() {
        const auto judgement = judged(Record());
        QCOMPARE(judgement.stage, Stage::juvenile);
        QCOMPARE(judgement.basis, StageBasis::nothing);
        QCOMPARE(how(judgement), QString("Juvenile assumed, no size and no age recorded"));
    }

    void scorpionsHaveTheirOwnRatio() {
        Record record;
        record.carapace("2026-01-01", 20);
        QCOMPARE(judged(record, profileOf("Pandinus imperator")).span.value().value, 140.0);
    }

    // A whip spider's legs are far longer for its carapace than a spider's: no ratio is known here.
    void whipSpidersAreNotJudgedByTheirCarapace() {
        for (const char* species : {"Damon diadema", "Mastigoproctus giganteus"}) {
            Record record;
            record.carapace("2026-01-01", 9);
            QVERIFY(!judged(record, profileOf(species)).span);
            record.span("2026-01-02", 170);
            QCOMPARE(judged(record, profileOf(species)).span.value().value, 170.0);
        }
    }

    void aGroupDoesNotRefuseAsOne() {
        Record record;
        record.refused("2026-05-01").refused("2026-05-04").refused("2026-05-07");
        const auto phase = [&] {
            return closuresOf(record.input(), judged(record), rules()).phaseOn(day("2026-05-08"));
        };
        QCOMPARE(phase(), Phase::likelyPremoult);
        record.subject.form = Form::group;
        QCOMPARE(phase(), Phase::between);
    }

    void thePhaseIsTheGravestThatLasts() {
        Record record;
        record.span("2026-01-01", 120).moulted("2026-05-01");
        record.add("2026-05-02", FactKind::premoultSign);
        const auto stage = judged(record);
        const auto closures = closuresOf(record.input(), stage, rules());
        QCOMPARE(closures.phaseOn(day("2026-05-14")), Phase::hardening);
        QCOMPARE(closures.phaseOn(day("2026-05-15")), Phase::premoult);
        QCOMPARE(closures.phaseOn(day("2026-06-13")), Phase::between);
        QCOMPARE(isoDate(closures.last(day("2026-05-14")).value()), std::string("2026-06-13"));
    }
};

QTEST_APPLESS_MAIN(TestStage)
#include "tst_husbandry_stage.moc"
