// Terms, places, facts and digests.
#include <QtTest>

#include <nlohmann/json.hpp>
#include <set>

#include "model/digest.h"
#include "model/fact.h"
#include "model/place.h"

using namespace burrow;
using nlohmann::json;

namespace {

const CivilDay day0{20'000};

Fact factOn(int day, FactKind kind, FactBody body = {}) {
    Fact fact;
    fact.kind = kind;
    fact.day = day0 + day;
    fact.happenedAt = {std::int64_t{fact.day.days} * 86'400'000};
    fact.body = std::move(body);
    return fact;
}

Fact offer(int day, Outcome outcome) {
    FactBody body;
    body.prey = "cricket";
    body.outcome = outcome;
    return factOn(day, FactKind::offered, body);
}

}  // namespace

class TestModel : public QObject {
    Q_OBJECT

private slots:
    void termsAcceptWhatPeopleWrite() {
        QCOMPARE(*parseTerm<Outcome>(" Left-In "), Outcome::leftIn);
        QCOMPARE(*parseTerm<Outcome>("took it"), Outcome::ate);
        QCOMPARE(*parseTerm<Sex>("0.1.0"), Sex::female);
        QCOMPARE(*parseTerm<Sex>("M"), Sex::male);
        QCOMPARE(*parseTerm<Standing>("on loan"), Standing::onLoan);
        QVERIFY(!parseTerm<Outcome>("maybe"));
        QCOMPARE(name(Outcome::leftIn), std::string_view("left_in"));
    }

    void places_data() {
        QTest::addColumn<QString>("written");
        QTest::addColumn<QString>("again");
        QTest::newRow("shelf") << "A"
                               << "A";
        QTest::newRow("shelf and position") << "A/3"
                                            << "A / 3";
        QTest::newRow("rack") << "left / A / 3"
                              << "left / A / 3";
        QTest::newRow("room") << "nursery/left/A/3"
                              << "nursery / left / A / 3";
        QTest::newRow("more parts") << "n/l/A/3/back"
                                    << "n / l / A / 3/back";
        QTest::newRow("holes") << "n//A"
                               << "n /  / A";
        QTest::newRow("slashes") << "////"
                                 << " /  /  / /";
    }
    void places() {
        QFETCH(QString, written);
        QFETCH(QString, again);
        const auto place = Place::parse(written.toStdString());
        QCOMPARE(QString::fromStdString(place.text()), again);
        QCOMPARE(Place::parse(place.text()), place);
    }

    void walksInOrder() {
        QVERIFY(compareWalk(Place::parse("2/1"), Place::parse("10/1")) < 0);
        QVERIFY(compareWalk(Place::parse("A/2"), Place::parse("A/10")) < 0);
        QVERIFY(compareWalk(Place{}, Place::parse("A")) < 0);
    }

    /// The table, the enum and the JSON codec name the same things.
    void kindTableIsWhole() {
        std::set<std::string> names;
        for (int i = 0; i <= static_cast<int>(FactKind::returned); ++i) {
            const auto kind = static_cast<FactKind>(i);
            QCOMPARE(spec(kind).kind, kind);
            QCOMPARE(*parseFactKind(spec(kind).name), kind);
            names.insert(std::string(spec(kind).name));
            for (const auto field : spec(kind).required) {
                QVERIFY(std::ranges::any_of(factFields(),
                                            [&](const auto& f) { return f.name == field; }));
            }
        }
        QCOMPARE(names.size(), factKinds().size());
    }

    void bodiesSurviveJson() {
        FactBody body;
        QVERIFY(setField(body, FactKind::offered, "prey", "cricket"));
        QVERIFY(setField(body, FactKind::offered, "Prey mm", "8.5"));
        QVERIFY(setField(body, FactKind::offered, "outcome", "left in"));
        QVERIFY(setField(body, FactKind::offered, "text", "small one"));
        const auto object = toJson(body);
        QCOMPARE(object.dump(),
                 std::string(R"({"outcome":"left_in","prey":"cricket","prey_mm":8.5,)"
                             R"("text":"small one"})"));
        QCOMPARE(factBody(FactKind::offered, object).value(), body);
    }

    void bodiesRefuse_data() {
        QTest::addColumn<QString>("text");
        QTest::addColumn<QString>("why");
        QTest::newRow("missing") << R"({"prey": "cricket"})"
                                 << "field.missing";
        QTest::newRow("wrong type") << R"({"outcome": 3})"
                                    << "field.unreadable";
        QTest::newRow("wrong word") << R"({"outcome": "maybe"})"
                                    << "field.unreadable";
        QTest::newRow("range") << R"({"outcome": "ate", "prey_mm": 1500})"
                               << "field.range";
        QTest::newRow("negative") << R"({"outcome": "ate", "count": -1})"
                                  << "field.range";
        QTest::newRow("fraction") << R"({"outcome": "ate", "count": 1.5})"
                                  << "field.unreadable";
        QTest::newRow("list") << "[1]"
                              << "field.notObject";
    }
    void bodiesRefuse() {
        QFETCH(QString, text);
        QFETCH(QString, why);
        const auto read = factBody(FactKind::offered, json::parse(text.toStdString()));
        QVERIFY(!read);
        QCOMPARE(QString::fromStdString(read.error().message.id), why);
    }

    void typedFieldsRefuse() {
        FactBody body;
        QCOMPARE(setField(body, FactKind::watered, "prey", "cricket").error().message.id,
                 std::string("field.unknown"));
        QCOMPARE(setField(body, FactKind::measured, "span_mm", "inf").error().message.id,
                 std::string("field.unreadable"));
        QCOMPARE(setField(body, FactKind::note, "text", std::string(5000, 'x')).error().message.id,
                 std::string("field.tooLong"));
        QCOMPARE(setField(body, FactKind::note, "text", "a\xFF").error().message.id,
                 std::string("field.unreadable"));
    }

    /// Fields from a newer version do not hinder reading.
    void unknownFieldsPassed() {
        QVERIFY(factBody(FactKind::watered, json{{"from_the_future", 1}}));
    }

    void digestCountsRefusals() {
        const std::vector<Fact> history{offer(0, Outcome::ate), offer(8, Outcome::refused),
                                        offer(12, Outcome::refused)};
        const auto digest = digestOf(history);
        QCOMPARE(digest.refusalsInARow, 2);
        QCOMPARE(digest.lastAccepted->day, day0);
        QCOMPARE(digest.lastOffer->day, day0 + 12);
        QCOMPARE(digest.leftoversSince->ms, history[1].happenedAt.ms);
    }

    void digestMoultClearsSigns() {
        auto digest = digestOf(
            std::vector<Fact>{offer(0, Outcome::refused), factOn(1, FactKind::premoultSign)});
        QVERIFY(digest.premoultSign.has_value());
        FactBody size;
        size.span = Millimetres{62};
        fold(digest, factOn(20, FactKind::moulted, size));
        QVERIFY(!digest.premoultSign && !digest.fangsBlack);
        QCOMPARE(digest.refusalsInARow, 0);
        QCOMPARE(digest.span->value, 62.0);
        fold(digest, factOn(29, FactKind::fangsBlack));
        QCOMPARE(*digest.fangsBlack, day0 + 29);
    }

    /// What is measured of a shed skin is the size of that moult; a size taken of the animal is not.
    void sizesOfSkinsAreTheMoults() {
        auto first = factOn(0, FactKind::moulted);
        first.id = EntryId{*Uuid::parse("01890a5d-ac96-774b-bcce-b302099a8057")};
        auto second = factOn(90, FactKind::moulted, {.span = Millimetres{70}});
        second.id = EntryId{*Uuid::parse("01890a5d-ac96-774b-bcce-b302099a8058")};
        auto skin = factOn(0, FactKind::measured, {.carapace = Millimetres{15.2}});
        skin.body.about = first.id;
        skin.stamp = 1;
        auto again = skin;
        again.body.carapace = Millimetres{15.4};
        again.stamp = 2;
        const auto animal = factOn(95, FactKind::measured, {.carapace = Millimetres{18}});
        const std::vector<Fact> facts{first, skin, again, second, animal};

        const auto digest = digestOf(facts);
        QCOMPARE(digest.recentMoults.size(), std::size_t{2});
        QCOMPARE(digest.recentMoults[0].carapace, Millimetres{15.4});
        QVERIFY(!digest.recentMoults[1].carapace);
        QCOMPARE(digest.carapace, Millimetres{18});

        QCOMPARE(markOf(first, facts), (MoultMark{day0, std::nullopt, Millimetres{15.4}}));
        QCOMPARE(markOf(second, facts), (MoultMark{day0 + 90, Millimetres{70}, std::nullopt}));
    }

    /// Written down today about the first of two moults: the newest size is that of the second.
    void aSizeOfAnEarlierSkinIsNotTheAnimals() {
        auto first = factOn(0, FactKind::moulted, {.carapace = Millimetres{9}});
        first.id = EntryId{*Uuid::parse("01890a5d-ac96-774b-bcce-b302099a8057")};
        auto second =
            factOn(90, FactKind::moulted, {.span = Millimetres{80}, .carapace = Millimetres{12}});
        second.id = EntryId{*Uuid::parse("01890a5d-ac96-774b-bcce-b302099a8058")};
        auto late = factOn(200, FactKind::measured,
                           {.span = Millimetres{55}, .carapace = Millimetres{9.1}});
        late.body.about = first.id;
        auto digest = digestOf(std::vector<Fact>{first, second, late});
        QCOMPARE(digest.carapace, Millimetres{12});
        QCOMPARE(digest.span, Millimetres{80});
        QCOMPARE(digest.sizedOn, std::optional(day0 + 90));
        QCOMPARE(digest.recentMoults[1].carapace, Millimetres{12});
        // The same with the time of its moult.
        late.day = first.day;
        late.happenedAt = first.happenedAt;
        digest = digestOf(std::vector<Fact>{first, late, second});
        QCOMPARE(digest.recentMoults[0].carapace, Millimetres{9.1});
        QCOMPARE(digest.carapace, Millimetres{12});
        // Of the only moult it can be of no other.
        late.day = day0 + 200;
        digest = digestOf(std::vector<Fact>{first, late});
        QCOMPARE(digest.carapace, Millimetres{9.1});
        QCOMPARE(digest.recentMoults[0].span, Millimetres{55});
    }

    void digestLeftovers() {
        auto digest = digestOf(std::vector<Fact>{offer(0, Outcome::leftIn)});
        QVERIFY(digest.leftoversSince.has_value());
        QCOMPARE(digest.refusalsInARow, 0);
        fold(digest, factOn(1, FactKind::leftoversOut));
        QVERIFY(!digest.leftoversSince);
    }

    void digestKeepsAFew() {
        std::vector<Fact> history;
        for (int i = 0; i < 30; ++i) history.push_back(factOn(i * 30, FactKind::moulted));
        const auto digest = digestOf(history);
        QCOMPARE(digest.moultCount, 30);
        QCOMPARE(digest.recentMoults.size(), Digest::recentKept);
        QCOMPARE(digest.lastMoult(), std::optional(day0 + 29 * 30));
    }
};

QTEST_APPLESS_MAIN(TestModel)
#include "tst_model.moc"
