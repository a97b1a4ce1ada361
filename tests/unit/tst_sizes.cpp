// Sizes over moults, and the line through pairs of carapace and leg span.
#include <QtTest>

#include <cmath>

#include "growth/measures.h"
#include "room/sizes.h"
#include "support/assets.h"
#include "support/book.h"

using namespace burrow;
using namespace burrow::test;
using namespace burrow::growth;

namespace {

/// NIST Statistical Reference Datasets, linear regression: Norris (J. Norris, NIST, "Calibration of Ozone
/// Monitors"), 36 pairs of y and x.
const std::vector<Pair> norris = [] {
    const double values[][2] = {{0.1, 0.2},     {338.8, 337.4}, {118.1, 118.2}, {888.0, 884.6},
                                {9.2, 10.1},    {228.1, 226.5}, {668.5, 666.3}, {998.5, 996.3},
                                {449.1, 448.6}, {778.9, 777.0}, {559.2, 558.2}, {0.3, 0.4},
                                {0.1, 0.6},     {778.1, 775.5}, {668.8, 666.9}, {339.3, 338.0},
                                {448.9, 447.5}, {10.8, 11.6},   {557.7, 556.0}, {228.3, 228.1},
                                {998.0, 995.8}, {888.8, 887.6}, {119.6, 120.2}, {0.3, 0.3},
                                {0.6, 0.3},     {557.6, 556.8}, {339.3, 339.1}, {888.0, 887.2},
                                {998.5, 999.0}, {778.9, 779.0}, {10.2, 11.1},   {117.6, 118.3},
                                {228.9, 229.2}, {668.4, 669.1}, {449.2, 448.9}, {0.2, 0.5}};
    std::vector<Pair> pairs;
    for (const auto& [y, x] : values) pairs.push_back({x, y});
    return pairs;
}();

void compare(double value, double wanted, double relative) {
    QVERIFY2(std::abs(value - wanted) <= relative * std::abs(wanted),
             qPrintable(QString::number(value, 'g', 15) + " and not " +
                        QString::number(wanted, 'g', 15)));
}

Fact sizeFact(int day, FactKind kind, double carapace, double span) {
    Fact fact;
    fact.id = EntryId{Uuid::named("size " + std::to_string(day))};
    fact.kind = kind;
    fact.day = CivilDay{day};
    fact.happenedAt = Instant{day * msPerDay};
    if (carapace > 0) fact.body.carapace = Millimetres{carapace};
    if (span > 0) fact.body.span = Millimetres{span};
    return fact;
}

FactBody sized(double carapace, double span) {
    return sizeFact(0, FactKind::measured, carapace, span).body;
}

}  // namespace

class TestSizes : public QObject {
    Q_OBJECT

private slots:
    /// The certified values of the data set, to its fifteen digits less what doubles lose.
    void norrisAsCertified() {
        const auto line = fitLine(norris);
        QVERIFY(line);
        QCOMPARE(line->count, 36);
        compare(line->intercept, -0.262323073774029, 1e-10);
        compare(line->slope, 1.00211681802045, 1e-13);
        compare(line->interceptError, 0.232818234301152, 1e-10);
        compare(line->slopeError, 0.429796848199937e-3, 1e-10);
        compare(line->residual, 0.884796396144373, 1e-10);
    }

    /// Heights and weights of the data set `women` of R (The World Almanac, 1975): slope 3.45 and intercept
    /// -87.51667, residual standard error 1.525 with 13 degrees of freedom, as R's manual prints them. At
    /// the mean, 65, the next value lies within t x 1.525 x sqrt(1 + 1/15), with t = 2.160 of 0.975
    /// (NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.2).
    void theIntervalOfTheNextValue() {
        const double weights[] = {115, 117, 120, 123, 126, 129, 132, 135,
                                  139, 142, 146, 150, 154, 159, 164};
        std::vector<Pair> pairs;
        for (int i = 0; i < 15; ++i) pairs.push_back({58.0 + i, weights[i]});
        const auto line = fitLine(pairs);
        QVERIFY(line);
        compare(line->slope, 3.45, 1e-12);
        compare(line->intercept, -87.51667, 1e-7);
        compare(line->residual, 1.525, 1e-4);
        compare(line->halfWidthOfNext(65, 0.95), 2.160 * 1.525 * std::sqrt(1 + 1.0 / 15), 5e-4);
        QVERIFY(line->halfWidthOfNext(75, 0.95) > line->halfWidthOfNext(65, 0.95));
    }

    void twoPairsMakeNoLine() {
        QVERIFY(!fitLine(std::vector<Pair>{{1, 2}, {2, 3}}));
        QVERIFY(!fitLine(std::vector<Pair>{{1, 2}, {1, 3}, {1, 4}}));
        QVERIFY(!SpanByCarapace::of(std::vector<SizePair>{{{10}, {60}}, {{12}, {70}}}));
        QVERIFY(!SpanByCarapace::of({}));
    }

    /// span = 5 x carapace^1.1 without any scatter: the line gives it back, and the interval has no width.
    void aPowerLawIsFound() {
        std::vector<SizePair> pairs;
        for (const double carapace : {4.0, 7.0, 11.0, 18.0}) {
            pairs.push_back({{carapace}, {5 * std::pow(carapace, 1.1)}});
        }
        const auto law = SpanByCarapace::of(pairs);
        QVERIFY(law);
        compare(law->line().slope, 1.1, 1e-12);
        compare(std::exp(law->line().intercept), 5, 1e-12);
        const auto at = law->at(Millimetres{13});
        compare(at.span.value, 5 * std::pow(13, 1.1), 1e-12);
        compare(at.interval95.least.value, at.interval95.most.value, 1e-9);
        QVERIFY(!at.isBeyond);
        QVERIFY(law->at(Millimetres{19}).isBeyond && law->at(Millimetres{3}).isBeyond);
    }

    void theSameMeasureOverTheMoults() {
        const std::vector<Fact> facts{
            sizeFact(400, FactKind::moulted, 12.5, 0), sizeFact(10, FactKind::measured, 8, 0),
            sizeFact(100, FactKind::moulted, 10, 55),  sizeFact(150, FactKind::measured, 10.2, 0),
            sizeFact(500, FactKind::moulted, 0, 0),    sizeFact(510, FactKind::offered, 30, 0)};
        const auto values = measureHistory(facts, Measure::carapace);
        QCOMPARE(values.size(), std::size_t{4});
        QCOMPARE(values[0].moult, 0);
        QVERIFY(!values[0].factor);
        QVERIFY(values[1].isOfTheMoult && !values[2].isOfTheMoult);
        compare(*values[1].factor, 10.0 / 8, 1e-12);
        compare(*values[2].factor, 10.2 / 8, 1e-12);  // in the same skin as the one before
        QCOMPARE(values[3].moult, 2);
        compare(*values[3].factor, 12.5 / 10.2, 1e-12);
        QCOMPARE(measureHistory(facts, Measure::span).size(), std::size_t{1});
    }

    void onePairForEachSkin() {
        const std::vector<Fact> facts{
            sizeFact(1, FactKind::measured, 8, 0),   sizeFact(2, FactKind::measured, 0, 44),
            sizeFact(3, FactKind::measured, 8.1, 0), sizeFact(100, FactKind::moulted, 10, 55),
            sizeFact(200, FactKind::moulted, 12, 0), sizeFact(300, FactKind::moulted, 0, 80)};
        const auto pairs = sizePairs(facts);
        QCOMPARE(pairs.size(), std::size_t{2});
        QCOMPARE(pairs[0].carapace, Millimetres{8.1});
        QCOMPARE(pairs[0].span, Millimetres{44});
        QCOMPARE(pairs[1].span, Millimetres{55});
    }

    /// Written down today about the first of two moults, without a date: it is of that skin.
    void aSizeAboutAMoultIsOfItsSkin() {
        auto late = sizeFact(500, FactKind::measured, 9.1, 55);
        const std::vector<Fact> moults{sizeFact(100, FactKind::moulted, 9, 0),
                                       sizeFact(300, FactKind::moulted, 12, 80)};
        late.body.about = moults[0].id;
        const std::vector<Fact> facts{late, moults[1], moults[0]};
        const auto values = measureHistory(facts, Measure::carapace);
        QCOMPARE(values.size(), std::size_t{3});
        QCOMPARE(values[1].size, Millimetres{9.1});
        QCOMPARE(values[1].moult, 1);
        QCOMPARE(values[1].day, CivilDay{100});
        QVERIFY(values[1].isOfTheMoult && !values[1].factor);
        compare(*values[2].factor, 12 / 9.1, 1e-12);
        const auto pairs = sizePairs(facts);
        QCOMPARE(pairs.size(), std::size_t{2});
        QCOMPARE(pairs[0].carapace, Millimetres{9.1});
        QCOMPARE(pairs[0].span, Millimetres{55});
        QCOMPARE(pairs[1].carapace, Millimetres{12});
        QCOMPARE(pairs[1].span, Millimetres{80});
    }

    /// All kinds, with their intervals; of each skin the last that was taken of it, not of the animal in it.
    void eachKindOverTheSkins() {
        auto animal = sizeFact(150, FactKind::measured, 0, 0);
        animal.body.fang = Millimetres{5};
        auto skin = sizeFact(100, FactKind::measured, 0, 0);
        skin.body.fang = Millimetres{4};
        skin.body.low = Millimetres{3.8};
        skin.body.high = Millimetres{4.2};
        skin.body.method = Method::photo;
        auto tibia = sizeFact(301, FactKind::measured, 0, 0);
        tibia.body.segment = "leg 4 tibia";
        tibia.body.segmentLength = Millimetres{11};
        auto second = sizeFact(302, FactKind::measured, 0, 0);
        second.body.fang = Millimetres{6};
        const std::vector<Fact> moults{sizeFact(99, FactKind::moulted, 0, 0),
                                       sizeFact(300, FactKind::moulted, 0, 0)};
        skin.body.about = moults[0].id;
        second.body.about = tibia.body.about = moults[1].id;
        const std::vector<Fact> facts{animal, skin, tibia, second, moults[0], moults[1]};
        const auto all = measureHistory(facts, Measure::fang);
        QCOMPARE(all.size(), std::size_t{3});
        const auto skins = onePerSkin(all);
        QCOMPARE(skins.size(), std::size_t{2});
        QCOMPARE(skins[0].size, Millimetres{4});
        QCOMPARE(skins[0].low, Millimetres{3.8});
        QCOMPARE(skins[0].high, Millimetres{4.2});
        QVERIFY(skins[0].method == Method::photo);
        compare(*skins[1].factor, 1.5, 1e-12);
        QCOMPARE(segmentsOf(facts), std::vector<std::string>{"leg 4 tibia"});
        QCOMPARE(measureHistory(facts, Measure::segment, "leg 4 tibia").size(), std::size_t{1});
        QVERIFY(measureHistory(facts, Measure::segment, "leg 1 tibia").empty());
        QVERIFY(measureHistory(facts, Measure::carapaceWidth).empty());
    }

    void aRoomLearnsFromItsOwnOfTheSpecies() {
        TestBook room;
        const auto profiles = Profiles::fromJson({}).value();
        const auto first = room.add("214", "Brachypelma hamorii");
        const auto second = room.add("215", "Brachypelma hamorii");
        const auto other = room.add("300", "Grammostola pulchra");
        const auto at = [&](int day) { return Instant{fridayEvening.ms + day * msPerDay}; };
        room.log(first, FactKind::moulted, sized(10, 62), at(-300));
        room.log(first, FactKind::moulted, sized(13, 84), at(-100));
        room.log(other, FactKind::moulted, sized(10, 200), at(-100));
        auto sizes = sizesOf(room.book, first, profiles).value().value();
        QCOMPARE(sizes.pairs.size(), std::size_t{2});
        QVERIFY(!sizes.spanByCarapace && !sizes.estimate);
        QCOMPARE(
            englishWords().say(sizes.says, {}),
            std::string("2 pairs of carapace and leg span on record for this species, and it takes "
                        "3 for an estimate."));
        room.log(second, FactKind::moulted, sized(16, 103), at(-50));
        room.log(second, FactKind::moulted, sized(18, 0), at(-5));
        sizes = sizesOf(room.book, second, profiles).value().value();
        QVERIFY(sizes.estimate && sizes.estimate->isBeyond);
        QVERIFY(sizes.estimate->span > Millimetres{103} && sizes.estimate->span < Millimetres{130});
        QVERIFY(sizes.estimate->interval95.least < sizes.estimate->span);
        QCOMPARE(sizes.says.id, std::string("growth.estimate"));
        QCOMPARE(saidOf(sizes, Millimetres{18}).size(), std::size_t{2});
        QCOMPARE(saidOf(sizes, Millimetres{18})[1].id, std::string("growth.beyond"));
        QCOMPARE(saidOf(sizes, Millimetres{12}).size(), std::size_t{1});
        QVERIFY(!sizesOf(room.book, SubjectId{room.book.newId()}, profiles).value());
    }
};

QTEST_APPLESS_MAIN(TestSizes)
#include "tst_sizes.moc"
