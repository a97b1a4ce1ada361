// The chance that an animal is female, worked by hand beside each check.
#include <QtTest>

#include <cmath>

#include "sexing/judge.h"
#include "support/assets.h"

using namespace burrow;
using namespace burrow::sexing;

namespace {

const SexingRules& rules() {
    static const auto rules =
        SexingRules::fromJson(
            test::slurp(std::filesystem::path(BURROW_ASSETS_DIR) / "rules/tables/sexing.json"))
            .value();
    return rules;
}

EntryId entry(int number) { return EntryId{Uuid::named("entry " + std::to_string(number))}; }

/// A look at a moult of its own; `skin` says which.
Sighting look(int number, Sex says, std::optional<Clarity> clarity, double carapace, int skin) {
    Sighting seen;
    seen.entry = entry(number);
    seen.day = CivilDay{20'000 + number};
    seen.says = says;
    seen.clarity = clarity;
    seen.skin = entry(1000 + skin);
    seen.moultDay = seen.day;
    if (carapace > 0) seen.carapace = Millimetres{carapace};
    return seen;
}

Sighting decisive(int number, Decisive what) {
    Sighting seen;
    seen.entry = entry(number);
    seen.day = CivilDay{20'000 + number};
    seen.look = Look::mature;
    seen.says = what == Decisive::sac ? Sex::female : Sex::male;
    seen.decisive = what;
    return seen;
}

Finding judged(const std::vector<Sighting>& sightings, const Question& question = {}) {
    return judge(sightings, rules(), question);
}

void compare(double value, double wanted) {
    QVERIFY2(std::abs(value - wanted) < 1e-9,
             qPrintable(QString::number(value, 'g', 12) + " and not " +
                        QString::number(wanted, 'g', 12)));
}

std::vector<Part> parts(const Finding& finding) {
    std::vector<Part> all;
    for (const auto& line : finding.ledger) all.push_back(line.part);
    return all;
}

std::vector<ConflictKind> conflicts(const Finding& finding) {
    std::vector<ConflictKind> all;
    for (const auto& conflict : finding.conflicts) all.push_back(conflict.kind);
    return all;
}

using Kinds = std::vector<ConflictKind>;

Fact fact(int number, FactKind kind, FactBody body = {}) {
    Fact made;
    made.id = entry(number);
    made.kind = kind;
    made.day = CivilDay{20'000 + number};
    made.happenedAt = Instant{(20'000 + number) * 86'400'000LL};
    made.body = std::move(body);
    return made;
}

}  // namespace

class TestSexEvidence : public QObject {
    Q_OBJECT

private slots:
    void nothingSeenIsThePrior() {
        const auto finding = judged({});
        compare(finding.female, 0.5);
        QCOMPARE(finding.verdict, Sex::unknown);
        QVERIFY(!finding.stop);
        QVERIFY(!finding.isSettled());
        QVERIFY(finding.ledger.empty() && finding.conflicts.empty());
    }

    /// One plate, seen clearly at 24.1 mm: 60 to 1. Even odds times 60 are 60 : 1, so P = 60 / 61.
    void onePlateByHand() {
        const auto finding = judged({look(1, Sex::female, Clarity::clearly, 24.1, 1)});
        compare(finding.female, 60.0 / 61.0);
        QCOMPARE(finding.verdict, Sex::female);
        QCOMPARE(finding.stop, Clarity::clearly);  // 0.9836: at least 0.95 and below 0.99
        QVERIFY(finding.isSettled() && finding.wouldSettle.empty());
        QCOMPARE(finding.ledger[0].row, std::string("over_16.clearly"));
        compare(finding.ledger[0].before, 0.5);
        compare(finding.ledger[0].after, 60.0 / 61.0);
        compare(finding.ledger[0].logOdds, std::log(60.0));
        QCOMPARE(finding.ledger[0].why.id, std::string("sexing.seen.moult.female.sized"));
    }

    /// None seen, fairly, at 9 mm: 0.4. Odds 0.4 : 1, P = 0.4 / 1.4 = 0.2857; male at 0.7143, past 0.70.
    void noPlateByHand() {
        const auto finding = judged({look(1, Sex::male, Clarity::fairly, 9, 1)});
        compare(finding.female, 0.4 / 1.4);
        QCOMPARE(finding.verdict, Sex::male);
        QCOMPARE(finding.stop, Clarity::partly);
        QVERIFY(!finding.isSettled());
    }

    /// Plate at 9 mm, fairly (5), then none at 13 mm, barely (0.8): they say different things, so both count
    /// in full: 5 x 0.8 = 4, P = 4 / 5.
    void whatDisagreesAddsUp() {
        const auto finding = judged({look(1, Sex::female, Clarity::fairly, 9, 1),
                                     look(2, Sex::male, Clarity::barely, 13, 2)});
        compare(finding.female, 0.8);
        QCOMPARE(conflicts(finding), Kinds{ConflictKind::looks});
        QCOMPARE(finding.conflicts[0].factors, (std::vector<std::size_t>{0, 1}));
    }

    /// Plates at 9 mm (5) and 13 mm (9), both fairly: the stronger in full, seven tenths of the logarithm of
    /// the other: odds 9 x 5^0.7 = 9 x 3.0852 = 27.77, P = 0.96524.
    void whatAgreesCountsInPart() {
        const auto finding = judged({look(1, Sex::female, Clarity::fairly, 9, 1),
                                     look(2, Sex::female, Clarity::fairly, 13, 2)});
        const double odds = 9 * std::pow(5, 0.7);
        QVERIFY(std::abs(odds - 27.77) < 0.01);
        compare(finding.female, odds / (1 + odds));
        QCOMPARE(parts(finding), (std::vector<Part>{Part::agrees, Part::counts}));
        compare(finding.ledger[0].weight, 0.7);
        QVERIFY(finding.conflicts.empty());
    }

    /// Of two looks at one moult the clearest counts; another keeper's is no second moult.
    void oneSkinCountsOnce() {
        auto other = look(2, Sex::female, Clarity::clearly, 9, 1);
        other.judge = "Wren";
        const auto finding = judged({look(1, Sex::female, Clarity::partly, 9, 1), other});
        compare(finding.female, 12.0 / 13.0);  // 12: 9 mm, clearly
        QCOMPARE(parts(finding), (std::vector<Part>{Part::sameSkin, Part::counts}));
        QVERIFY(finding.conflicts.empty());
        // As clear as the keeper's own: the keeper's counts.
        other.clarity = Clarity::partly;
        QCOMPARE(parts(judged({other, look(1, Sex::female, Clarity::partly, 9, 1)})),
                 (std::vector<Part>{Part::counts, Part::sameSkin}));
    }

    void equallyClearOppositesCancel() {
        const auto finding = judged({look(1, Sex::female, Clarity::fairly, 9, 1),
                                     look(2, Sex::male, Clarity::fairly, 9, 1),
                                     look(3, Sex::female, Clarity::barely, 9, 1)});
        compare(finding.female, 0.5);
        QCOMPARE(parts(finding), (std::vector<Part>{Part::cancels, Part::cancels, Part::sameSkin}));
        QCOMPARE(conflicts(finding), Kinds{ConflictKind::sameSkin});
        bool asksOthers = false;
        for (const auto& what : finding.wouldSettle) {
            asksOthers = asksOthers || what.what == Settles::secondOpinion;
        }
        QVERIFY(asksOthers);
    }

    void aLookThatCouldNotTellHidesNothing() {
        const auto finding = judged({look(1, Sex::female, Clarity::partly, 9, 1),
                                     look(2, Sex::unknown, Clarity::beyondDoubt, 9, 1)});
        compare(finding.female, 2.2 / 3.2);
        QCOMPARE(parts(finding), (std::vector<Part>{Part::counts, Part::cannotTell}));
    }

    void clarityThatNobodyWroteDownIsTakenForPartly() {
        const auto finding = judged({look(1, Sex::female, std::nullopt, 9, 1)});
        compare(finding.female, 2.2 / 3.2);
        const auto* clarity = finding.ledger[0].why.find("clarity");
        QVERIFY(clarity != nullptr && *clarity == MessageValue(std::string("unstated")));
    }

    void sizesBelongToBandsFromTheirLowerEnd_data() {
        QTest::addColumn<double>("carapace");
        QTest::addColumn<QString>("band");
        QTest::newRow("0.1") << 0.1 << "under_4";
        QTest::newRow("3.99") << 3.99 << "under_4";
        QTest::newRow("4") << 4.0 << "4_to_7";
        QTest::newRow("7") << 7.0 << "7_to_11";
        QTest::newRow("11") << 11.0 << "11_to_16";
        QTest::newRow("16") << 16.0 << "over_16";
        QTest::newRow("80") << 80.0 << "over_16";
        QTest::newRow("more than any") << 500.0 << "over_16";
        QTest::newRow("not measured") << 0.0 << "unmeasured";
    }
    void sizesBelongToBandsFromTheirLowerEnd() {
        QFETCH(double, carapace);
        QFETCH(QString, band);
        const auto size = carapace > 0 ? std::optional(Millimetres{carapace}) : std::nullopt;
        QCOMPARE(QString::fromStdString(rules().moult(Sex::female, Clarity::fairly, size).row),
                 band + ".fairly");
    }

    /// Larger and clearer never says less.
    void theTableRises() {
        const std::vector<double> sizes{2, 5, 9, 13, 20};
        for (std::size_t size = 0; size < sizes.size(); ++size) {
            for (int clarity = 0; clarity < 5; ++clarity) {
                const auto at = [&](std::size_t s, int c, Sex says) {
                    return rules()
                        .moult(says, static_cast<Clarity>(c), Millimetres{sizes[s]})
                        .value;
                };
                if (size > 0) {
                    QVERIFY(at(size, clarity, Sex::female) >= at(size - 1, clarity, Sex::female));
                    QVERIFY(at(size, clarity, Sex::male) <= at(size - 1, clarity, Sex::male));
                }
                if (clarity > 0) {
                    QVERIFY(at(size, clarity, Sex::female) > at(size, clarity - 1, Sex::female));
                    QVERIFY(at(size, clarity, Sex::male) < at(size, clarity - 1, Sex::male));
                }
                // A plate that is seen says more than one that is not.
                QVERIFY(at(size, clarity, Sex::female) * at(size, clarity, Sex::male) >= 1);
            }
        }
    }

    /// Hooks at 1 : 10,000: P = 0.0001 / 1.0001. The plate seen before is corrected.
    void whatSettlesItCorrectsWhatWasSaid() {
        const auto finding = judged(
            {look(1, Sex::female, Clarity::beyondDoubt, 20, 1),
             look(2, Sex::male, Clarity::fairly, 22, 2), decisive(3, Decisive::ultimateMoult)},
            {"Brachypelma hamorii", Sex::female});
        compare(finding.female, 0.0001 / 1.0001);
        QCOMPARE(parts(finding),
                 (std::vector<Part>{Part::corrected, Part::setAside, Part::counts}));
        QVERIFY(finding.isDecisive && finding.isSettled());
        QCOMPARE(finding.stop, Clarity::beyondDoubt);
        QCOMPARE(conflicts(finding), Kinds{ConflictKind::recorded});
    }

    void aSacIsAFemale() {
        const auto finding = judged({decisive(1, Decisive::sac)});
        compare(finding.female, 10'000.0 / 10'001.0);
        QCOMPARE(finding.verdict, Sex::female);
    }

    /// A plate at 9 mm, fairly (5), and records that settle it both ways: only the plate counts, 5 / 6.
    void bothSettledSettlesNothing() {
        const auto finding = judged({look(1, Sex::female, Clarity::fairly, 9, 1),
                                     decisive(2, Decisive::spermWeb), decisive(3, Decisive::sac)});
        compare(finding.female, 5.0 / 6.0);
        QVERIFY(!finding.isDecisive && !finding.isSettled());
        QCOMPARE(conflicts(finding), Kinds{ConflictKind::settled});
        QCOMPARE(finding.wouldSettle.size(), std::size_t{1});
        QCOMPARE(finding.wouldSettle[0].what, Settles::record);
    }

    void colourIsWeakAndCountsOnce() {
        auto first = look(1, Sex::male, Clarity::beyondDoubt, 0, 1);
        first.look = Look::colour;
        auto second = look(2, Sex::male, Clarity::beyondDoubt, 0, 2);
        second.look = Look::colour;
        const Question poecilotheria{"Poecilotheria regalis"};
        compare(judged({first, second}, poecilotheria).female, 0.4 / 1.4);
        compare(judged({first}, {"Poecilotheria metallica"}).female, 0.77 / 1.77);
        compare(judged({first}, {"Grammostola pulchra"}).female, 0.77 / 1.77);
    }

    /// Moult with a plate at 9 mm, partly (2.2), underside female, clearly (3): 3 x 2.2^0.7.
    void theUndersideIsAnotherLook() {
        auto under = look(2, Sex::female, Clarity::clearly, 0, 1);
        under.look = Look::underside;
        const auto finding = judged({look(1, Sex::female, Clarity::partly, 9, 1), under});
        const double odds = 3 * std::pow(2.2, 0.7);
        compare(finding.female, odds / (1 + odds));
    }

    /// What a look at a moult of 16 mm would do now, from even odds: plate 60 / 61, none 0.03 / 1.03.
    void saysHowFarTheNextLookWouldGo() {
        const auto finding = judged({});
        QCOMPARE(finding.wouldSettle[0].what, Settles::clearMoult);
        compare(*finding.wouldSettle[0].ifFemale, 60.0 / 61.0);
        compare(*finding.wouldSettle[0].ifMale, 0.03 / 1.03);
        const std::vector<WaitingMoult> waiting{{entry(7), CivilDay{20'007}, Millimetres{5}},
                                                {entry(8), CivilDay{20'008}, Millimetres{9}}};
        const auto withMoults = judged({}, {"", Sex::unknown, waiting});
        QCOMPARE(withMoults.wouldSettle[0].what, Settles::waitingMoult);
        QCOMPARE(withMoults.wouldSettle[0].moult, entry(8));
        compare(*withMoults.wouldSettle[0].ifFemale, 12.0 / 13.0);
    }

    /// By the definition, sum of p(x, y) log2(p(x, y) / (p(x) p(y))), with the chances of seeing a plate that
    /// give the ratios 30 and 0.07 of a clear look at 13 mm: in a male m = 0.93 / 29.93, in a female 30 m.
    void bitsByDefinition() {
        const double m = 0.93 / 29.93;
        const double f = 30 * m;
        for (const double p : {0.5, 0.2, 0.9}) {
            const double joint[2][2] = {{p * f, p * (1 - f)}, {(1 - p) * m, (1 - p) * (1 - m)}};
            double bits = 0;
            for (int sex = 0; sex < 2; ++sex) {
                for (int seen = 0; seen < 2; ++seen) {
                    const double alone =
                        (joint[sex][0] + joint[sex][1]) * (joint[0][seen] + joint[1][seen]);
                    bits += joint[sex][seen] * std::log2(joint[sex][seen] / alone);
                }
            }
            compare(expectedBits(p, Millimetres{13}, rules()), bits);
        }
        QVERIFY(expectedBits(0.5, Millimetres{20}, rules()) >
                expectedBits(0.5, Millimetres{3}, rules()));
    }

    void sightingsAreReadFromTheHistory() {
        FactBody sized;
        sized.carapace = Millimetres{12};
        FactBody photo;
        photo.role = PhotoRole::moult;
        photo.picture = Sha256::of("a moult");
        photo.about = entry(1);
        FactBody said;
        said.sex = Sex::female;
        said.about = entry(2);  // the photo stands for its moult
        FactBody under;
        under.sex = Sex::male;
        under.look = Look::underside;
        under.judge = "Wren";
        FactBody last;
        last.ultimate = true;
        FactBody noHooks;
        noHooks.sex = Sex::female;
        noHooks.look = Look::mature;
        const std::vector<Fact> facts{
            fact(9, FactKind::spermWeb),       fact(7, FactKind::moulted, last),
            fact(6, FactKind::sexed, noHooks), fact(5, FactKind::sexed, under),
            fact(3, FactKind::sexed, said),    fact(2, FactKind::photo, photo),
            fact(1, FactKind::moulted, sized), fact(4, FactKind::offered)};
        const auto seen = sightingsOf({}, facts, Order::tarantula);
        QCOMPARE(seen.size(), std::size_t{5});
        QCOMPARE(seen[0].skin, entry(1));
        QCOMPARE(seen[0].carapace, Millimetres{12});
        QCOMPARE(seen[0].look, Look::moult);
        QCOMPARE(seen[1].skin, entry(1));  // worn since then
        QCOMPARE(seen[1].judge, std::string("Wren"));
        QCOMPARE(judged(seen).ledger[2].part, Part::tellsNothing);
        QCOMPARE(seen[3].decisive, Decisive::ultimateMoult);
        QCOMPARE(seen[4].decisive, Decisive::spermWeb);
        // Bought as a grown male: only the record says so.
        Subject male;
        male.sex = Sex::male;
        male.mature = true;
        const auto bought = sightingsOf(male, {}, Order::tarantula);
        QCOMPARE(bought.size(), std::size_t{1});
        QVERIFY(!bought[0].entry && bought[0].decisive);
        QCOMPARE(sightingsOf(male, facts, Order::tarantula).size(), std::size_t{5});
    }

    void sizesOfOtherOrdersAreNotThoseOfTheTable() {
        FactBody sized;
        sized.carapace = Millimetres{20};
        FactBody said;
        said.sex = Sex::female;
        said.about = entry(1);
        said.clarity = Clarity::clearly;
        const std::vector<Fact> facts{fact(1, FactKind::moulted, sized),
                                      fact(2, FactKind::sexed, said)};
        const auto finding =
            judged(sightingsOf({}, facts, Order::scorpion), {"", Sex::unknown, {}, false});
        QCOMPARE(finding.ledger[0].row, std::string("unmeasured.clearly"));
        for (const auto& what : finding.wouldSettle) QVERIFY(what.what != Settles::grown);
    }

    /// 0.6 of the carapace; 12 mm where it is not known.
    void theCloseUpGoesByTheCarapace() {
        compare(rules().closeUp(Millimetres{15}).value, 9);
        compare(rules().closeUp(std::nullopt).value, 12);
    }

    void aDamagedTableIsRefused_data() {
        QTest::addColumn<QString>("from");
        QTest::addColumn<QString>("to");
        QTest::newRow("no source") << R"("source": "only females lay eggs")"
                                   << R"("source": "")";
        QTest::newRow("a gap") << R"("from_mm": 4, "below_mm": 7, "clarity": "fairly")"
                               << R"("from_mm": 5, "below_mm": 7, "clarity": "fairly")";
        QTest::newRow("a band without an end")
            << R"("from_mm": 4, "below_mm": 7, "clarity": "fairly")"
            << R"("from_mm": 4, "clarity": "fairly")";
        QTest::newRow("no such clarity") << R"("clarity": "fairly")"
                                         << R"("clarity": "mostly")";
        QTest::newRow("a plate for males") << R"("plate_ratio": 60)"
                                           << R"("plate_ratio": 0.6)";
        QTest::newRow("certain") << R"("ratio": 10000)"
                                 << R"("ratio": 1e9)";
        QTest::newRow("sacs of males") << R"("ratio": 10000)"
                                       << R"("ratio": 0.1)";
        QTest::newRow("stops that fall") << R"("least": 0.85)"
                                         << R"("least": 0.6)";
        QTest::newRow("a certain prior") << R"("id": "prior", "value": 0.5)"
                                         << R"("id": "prior", "value": 1)";
        QTest::newRow("no close-up") << R"("id": "close_up_mm")"
                                     << R"("id": "close_up_cm")";
        QTest::newRow("no colours for any") << R"("for": "*")"
                                            << R"("for": "Aphonopelma")";
        QTest::newRow("no JSON") << R"({)"
                                 << R"([)";
    }
    void aDamagedTableIsRefused() {
        QFETCH(QString, from);
        QFETCH(QString, to);
        auto text = QString::fromStdString(
            test::slurp(std::filesystem::path(BURROW_ASSETS_DIR) / "rules/tables/sexing.json"));
        QVERIFY(text.contains(from));
        text.replace(text.indexOf(from), from.size(), to);
        const auto read = SexingRules::fromJson(text.toStdString());
        QVERIFY(!read);
        const auto words = test::englishWords();
        QVERIFY(words.knows(read.error().message.id));
    }

    /// Every message that a finding can hold has its sentence.
    void everythingCanBeSaid() {
        const auto words = test::englishWords();
        const auto says = [&](const Message& message) {
            const auto text = words.say(message, {});
            QVERIFY2(!text.empty() && text.find('[') == std::string::npos &&
                         text.find('{') == std::string::npos,
                     (message.id + ": " + text).c_str());
        };
        for (const auto sex : {Sex::female, Sex::male, Sex::unknown}) {
            for (const auto what : {Look::moult, Look::underside, Look::mature, Look::colour}) {
                for (int clarity = -1; clarity < 5; ++clarity) {
                    for (const double size : {0.0, 9.0}) {
                        auto seen = look(1, sex, std::nullopt, size, 1);
                        if (clarity >= 0) seen.clarity = static_cast<Clarity>(clarity);
                        seen.look = what;
                        if (size == 0) seen.moultDay.reset();
                        if (what == Look::mature && sex == Sex::male) {
                            seen.decisive = Decisive::hooksOrBulbs;
                        }
                        const auto finding =
                            judged({seen, look(2, sex, Clarity::barely, 3, 2)}, {"", Sex::male});
                        for (const auto& line : finding.ledger) {
                            says(line.why);
                            says(line.counted);
                        }
                        for (const auto& conflict : finding.conflicts) says(conflict.why);
                        for (const auto& would : finding.wouldSettle) says(would.why);
                    }
                }
            }
        }
        for (int what = 0; what < 4; ++what) {
            const auto finding =
                judged({decisive(1, static_cast<Decisive>(what)), decisive(2, Decisive::sac),
                        look(3, Sex::male, Clarity::fairly, 9, 1)});
            for (const auto& line : finding.ledger) {
                says(line.why);
                says(line.counted);
            }
            for (const auto& conflict : finding.conflicts) says(conflict.why);
            for (const auto& would : finding.wouldSettle) says(would.why);
        }
    }
};

QTEST_APPLESS_MAIN(TestSexEvidence)
#include "tst_sex_evidence.moc"
