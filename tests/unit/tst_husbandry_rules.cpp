// Rules as data: what is shipped, what the keeper may change, and what is refused. Every value is
// common practice, no source.
#include <QTest>
#include <nlohmann/json.hpp>

#include "husbandry/rule_table.h"
#include "husbandry/rules.h"
#include "support/assets.h"

using namespace burrow;
using namespace burrow::test;
using nlohmann::json;

namespace {

using Override = std::pair<std::string, std::string>;

Rules shipped() { return Rules::fromJson(assetFiles("rules")).value(); }

/// The shipped rules with one of them changed.
Result<Rules> withRule(const std::string& id, const std::string& field, const json& value) {
    auto texts = assetFiles("rules");
    for (auto& text : texts) {
        auto list = json::parse(text);
        for (auto& rule : list) {
            if (rule.at("id") != id) continue;
            rule.erase(field);
            if (!value.is_null()) rule[field] = value;
        }
        text = list.dump();
    }
    return Rules::fromJson(texts);
}

template <class T>
QString said(const Result<T>& result) {
    return QString::fromStdString(englishWords().say(result.error().message, {}));
}

}  // namespace

class TestRules : public QObject {
    Q_OBJECT

private slots:
    void theShippedRulesAreCompleteAndSayWhereTheyComeFrom() {
        const auto rules = Rules::fromJson(assetFiles("rules"));
        if (!rules) QFAIL(qPrintable(said(rules)));
        for (const auto* rule : rules->all()) {
            QVERIFY(!rule->source.empty());
            QVERIFY2(rule->says.ends_with('.'), rule->id.c_str());
            QCOMPARE(rule->origin, RuleOrigin::assets);
        }
    }

    void theStartingValues() {
        const auto rules = shipped();
        QVERIFY((rules.dayRange("feed.interval.smallest") == Range<int>{3, 4}));
        QVERIFY((rules.dayRange("feed.interval.sling") == Range<int>{5, 7}));
        QVERIFY((rules.dayRange("feed.interval.juvenile") == Range<int>{7, 10}));
        QVERIFY((rules.dayRange("feed.interval.adult") == Range<int>{10, 14}));
        QVERIFY((rules.dayRange("feed.interval.mature_male") == Range<int>{14, 21}));
        QVERIFY((rules.dayRange("hardening.sling") == Range<int>{3, 5}));
        QVERIFY((rules.dayRange("hardening.juvenile") == Range<int>{7, 10}));
        QVERIFY((rules.dayRange("hardening.adult") == Range<int>{10, 14}));
        QVERIFY((rules.dayRange("damp.dry") == Range<int>{28, 35}));
        QCOMPARE(rules.hours("leftovers.within"), 24);
        QCOMPARE(rules.count("premoult.after_refusals"), 3);
        QCOMPARE(rules.days("premoult.hold.adult"), 42);
        QCOMPARE(rules.length("stage.sling.below_always").value, 40.0);
        QCOMPARE(rules.factor("stage.adult.from_fraction"), 0.75);
        QCOMPARE(rules.prey("prey.kind.juvenile"), std::string("cricket"));
    }

    void theKeepersOwnValueWinsAndSaysSo_data() {
        QTest::addColumn<QString>("text");
        QTest::addColumn<int>("least");
        QTest::addColumn<int>("most");
        QTest::newRow("hyphen") << "6-9" << 6 << 9;
        QTest::newRow("to") << " 6 to 9 " << 6 << 9;
        QTest::newRow("one number") << "8" << 8 << 8;
    }
    void theKeepersOwnValueWinsAndSaysSo() {
        QFETCH(QString, text);
        QFETCH(int, least);
        QFETCH(int, most);
        const std::vector<Override> mine{{"feed.interval.sling", text.toStdString()}};
        const auto before = shipped();
        const auto rules = before.with(mine).value();
        QVERIFY((rules.dayRange("feed.interval.sling") == Range<int>{least, most}));
        QCOMPARE(rules.origin("feed.interval.sling"), RuleOrigin::keeper);
        QCOMPARE(rules.origin("feed.interval.adult"), RuleOrigin::assets);
        QVERIFY((before.dayRange("feed.interval.sling") == Range<int>{5, 7}));
    }

    void numbersAndFeedersCanBeChangedToo() {
        const std::vector<Override> mine{{"prey.kind.adult", " locust "},
                                         {"stage.sling.below_fraction", "0.3"},
                                         {"leftovers.within", "12"}};
        const auto rules = shipped().with(mine).value();
        QCOMPARE(rules.prey("prey.kind.adult"), std::string("locust"));
        QCOMPARE(rules.factor("stage.sling.below_fraction"), 0.3);
        QCOMPARE(rules.hours("leftovers.within"), 12);
    }

    void whatCannotBeIsRefused_data() {
        QTest::addColumn<QString>("rule");
        QTest::addColumn<QString>("text");
        QTest::addColumn<QString>("expected");
        const auto row = [](const char* name, const char* rule, const char* text,
                            const char* expected) {
            QTest::newRow(name) << rule << text << expected;
        };
        row("unknown", "feed.interval.egg", "3", "no rule feed.interval.egg");
        row("family alone", "feed.interval", "3", "no rule feed.interval.");
        row("wrong way round", "feed.interval.sling", "9-6", "can't be 9-6");
        row("not a number", "feed.interval.sling", "weekly", "can't be weekly");
        row("three numbers", "feed.interval.sling", "1-2-3", "can't be 1-2-3");
        row("nothing", "feed.interval.sling", "", "takes numbers from 1 to 4000");
        row("zero days", "hardening.adult", "0", "can't be 0");
        row("negative", "hardening.adult", "-4", "can't be -4");
        row("half a day", "look.silent.adult", "3.5", "can't be 3.5");
        row("range for a number", "look.silent.adult", "3-5", "can't be 3-5");
        row("above one", "stage.adult.from_fraction", "75", "from 0.01 to 1");
        row("no feeder", "prey.kind.adult", "  ", "needs the name of a feeder");
        row("not finite", "prey.length.adult", "nan", "can't be nan");
    }
    void whatCannotBeIsRefused() {
        QFETCH(QString, rule);
        QFETCH(QString, text);
        QFETCH(QString, expected);
        const std::vector<Override> mine{{rule.toStdString(), text.toStdString()}};
        const auto rules = shipped().with(mine);
        QVERIFY(!rules);
        QVERIFY2(said(rules).contains(expected), qPrintable(said(rules)));
    }

    void aBadFileIsRefusedWithItsRule_data() {
        QTest::addColumn<QString>("field");
        QTest::addColumn<QString>("value");  // JSON; empty removes the field
        QTest::addColumn<QString>("expected");
        const auto row = [](const char* name, const char* field, const char* value,
                            const char* expected) {
            QTest::newRow(name) << field << value << expected;
        };
        row("no value", "value", "", "damp.dry has a value that can't be");
        row("wrong shape", "value", "28", "damp.dry has a value that can't be");
        row("wrong order", "value", "[35, 28]", "damp.dry has a value that can't be");
        row("text", "value", R"("monthly")", "damp.dry has a value that can't be");
        row("other unit", "unit", R"("hours")", "damp.dry has another unit");
        row("no source", "source", "", "damp.dry has no source");
        row("no sentence", "says", R"("")", "damp.dry has no source or no sentence");
        row("unknown id", "id", R"("damp.desert")", "no rule damp.desert");
        row("said twice", "id", R"("damp.moist")", "damp.moist is there twice");
    }
    void aBadFileIsRefusedWithItsRule() {
        QFETCH(QString, field);
        QFETCH(QString, value);
        QFETCH(QString, expected);
        const auto rules = withRule("damp.dry", field.toStdString(),
                                    value.isEmpty() ? json() : json::parse(value.toStdString()));
        QVERIFY(!rules);
        QVERIFY2(said(rules).contains(expected), qPrintable(said(rules)));
    }

    void aMissingRuleIsRefused() {
        const auto one = std::vector<std::string>{assetFiles("rules").at(0)};
        const auto rules = Rules::fromJson(one);
        QVERIFY(!rules);
        QVERIFY2(said(rules).contains("is missing"), qPrintable(said(rules)));
        QVERIFY(!Rules::fromJson(std::vector<std::string>{"{}"}));
        QVERIFY(!Rules::fromJson(std::vector<std::string>{"[1]"}));
    }

    void aFamilyHoldsOnlyItsMembers() {
        QVERIFY(familyOf("damp.dry") != nullptr);
        QVERIFY(familyOf("leftovers.within") != nullptr);
        QVERIFY(familyOf("damp") == nullptr);
        QVERIFY(familyOf("damp.dryness") == nullptr);
        QVERIFY(familyOf("dampdry") == nullptr);
        QVERIFY(familyOf("leftovers.within.sling") == nullptr);
    }
};

QTEST_APPLESS_MAIN(TestRules)
#include "tst_husbandry_rules.moc"
