// Why something is due, the rule behind it changed for one or for all, and species of one's own: by real
// clicks on the real pages.
#include <QtTest>

#include "pages/stage.h"

using namespace burrow::test;

namespace {

std::size_t ownRules(Stage& stage) { return stage.desk->room()->info().rules.size(); }

/// The line of facts with that name.
QQuickItem* line(Stage& stage, const QString& name) {
    for (auto* item : stage.hand->controls()) {
        if (item->property("name").toString() == name) return item;
    }
    qFatal("There is no line %s", qPrintable(name));
}

}  // namespace

class RulePages : public QObject {
    Q_OBJECT

private slots:
    void theRoundSaysWhy() {
        Stage stage;
        stage.round("044");
        stage.click("Why");
        QCOMPARE(stage.page(), QString("WhyPage"));
        QVERIFY2(stage.has("Usual gap between meals"), qPrintable(stage.words()));
        QVERIFY(stage.has("as shipped"));
        stage.click("Feeding");
        QVERIFY(!stage.has("Usual gap between meals"));
        stage.click("Water");
        QVERIFY(stage.has("late after"));
        stage.click("Back");
        QCOMPARE(stage.page(), QString("RoundPage"));
        stage.round("002");  // held
        stage.click("Why");
        QVERIFY2(stage.has("Held"), qPrintable(stage.words()));
    }

    void theAnimalPageLeadsToItsWorking() {
        Stage stage;
        stage.go("AnimalPage", {{"subject", stage.id("044")}});
        stage.click(line(stage, "Measuring"));
        QCOMPARE(stage.page(), QString("WhyPage"));
        QVERIFY(stage.has("Not needed") || stage.has("Waiting") || stage.has("Due"));
    }

    void aRuleIsChangedForOneAnimal() {
        Stage stage;
        stage.go("WhyPage", {{"subject", stage.id("044")}, {"care", "feed"}});
        stage.click(stage.first("RuleStrip"));
        QCOMPARE(stage.page(), QString("RulePage"));
        QVERIFY2(stage.has("for 044"), qPrintable(stage.words()));
    }

    void aRuleIsLookedAtAndLeft() {
        Stage stage;
        stage.go("RulePage", {{"rule", "feed.interval.adult"}});
        stage.fill("Your value", "soon");
        stage.click("See what changes");
        QCOMPARE(stage.page(), QString("RulePage"));
        QVERIFY2(stage.has("soon"), qPrintable(stage.words()));
        stage.fill("Your value", "20-30");
        stage.click("See what changes");
        QCOMPARE(stage.page(), QString("RulePreviewPage"));
        QTRY_VERIFY2(stage.has("The coming four weeks change for"), qPrintable(stage.words()));
        QVERIFY(stage.has("20 to 30 days, from you, instead of"));
        QVERIFY(stage.has("instead of"));
        stage.click("Leave it");
        QCOMPARE(stage.page(), QString("RulePage"));
        QCOMPARE(ownRules(stage), std::size_t{0});
    }

    void aRuleIsSavedForASpeciesAndTakenBack() {
        Stage stage;
        stage.go("RulePage", {{"rule", "feed.interval.adult"}});
        stage.click("A species");
        stage.fill("Species", "Brachypelma hamorii");
        QVERIFY(stage.has("kept here that it is for"));
        stage.fill("Your value", "20-30");
        stage.click("See what changes");
        QTRY_VERIFY(stage.has("It concerns"));
        stage.click("Save");
        QTRY_COMPARE(stage.page(), QString("RulePage"));
        QCOMPARE(ownRules(stage), std::size_t{1});
        QVERIFY2(stage.has("from species Brachypelma hamorii: this one holds"),
                 qPrintable(stage.words()));
        QVERIFY(stage.has("Without it: 10 to 14 days"));
        stage.click("Take it back");
        QCOMPARE(stage.page(), QString("RulePreviewPage"));
        stage.click("Save");
        QTRY_COMPARE(stage.page(), QString("RulePage"));
        QCOMPARE(ownRules(stage), std::size_t{0});
        stage.click("Undo");
        QCOMPARE(ownRules(stage), std::size_t{1});
        stage.key(Qt::Key_Escape);
        stage.go("RulesPage");
        QVERIFY(stage.has("one from you"));
    }

    void whatIsTypedIsNotLeftByOneTouch() {
        Stage stage;
        stage.go("RulePage", {{"rule", "feed.interval.adult"}});
        stage.fill("Your value", "20-30");
        stage.click("Back");
        QCOMPARE(stage.page(), QString("RulePage"));
        stage.click("Back");
        QVERIFY(stage.page() != QString("RulePage"));
    }

    void theListOpensARule() {
        Stage stage;
        stage.go("RulesPage");
        QVERIFY(stage.has("all as shipped"));
        stage.click(stage.first("RuleStrip"));
        QCOMPARE(stage.page(), QString("RulePage"));
        QVERIFY(stage.has("this one holds"));
    }

    void aShippedSpeciesIsChangedAndDropped() {
        Stage stage;
        stage.go("ProfilePage", {{"species", "Brachypelma hamorii"}});
        QVERIFY(stage.has("shipped"));
        stage.click("Change");
        QCOMPARE(stage.page(), QString("ProfileFormPage"));
        stage.fill("Size when grown, mm", "140-160");
        stage.click("Keep the change");
        QTRY_COMPARE(stage.page(), QString("ProfilePage"));
        QVERIFY2(stage.has("140 to 160 mm"), qPrintable(stage.words()));
        QVERIFY(stage.has("from you"));
        stage.click("As shipped again");
        QTRY_VERIFY(stage.has("130 to 150 mm"));
    }

    void aSpeciesIsAddedLikeAnother() {
        Stage stage;
        stage.go("SpeciesPage");
        stage.search("Novum genus");
        stage.click("Add a species");
        QCOMPARE(stage.page(), QString("ProfileFormPage"));
        stage.fill("Start from a species that is like it", "Brachypelma hamorii");
        stage.click("Add it");
        QCOMPARE(stage.page(), QString("ProfileFormPage"));  // what is its own is needed still
        stage.fill("Described by", "nobody yet");
        stage.click("Not checked");
        stage.click("Add it");
        QTRY_COMPARE(stage.page(), QString("ProfilePage"));
        QVERIFY2(stage.has("from you, as for Brachypelma hamorii"), qPrintable(stage.words()));
        QVERIFY(stage.desk->profiles().find("Novum genus") != nullptr);
    }

    void speciesTravelAsAFile() {
        Stage stage;
        const auto folder = stage.folder.path() / "to give";
        std::filesystem::create_directories(folder);
        stage.go("ProfilePage", {{"species", "Brachypelma hamorii"}});
        stage.click("Give it away as a file");
        stage.chooseFolder(folder);
        QTRY_VERIFY(std::filesystem::exists(folder / "Brachypelma-hamorii.json"));
        stage.key(Qt::Key_Escape);
        stage.go("SpeciesPage");
        stage.click("Take species in from a file");
        stage.chooseFiles({folder / "Brachypelma-hamorii.json"});
        QTRY_VERIFY2(stage.has("One species read"), qPrintable(stage.words()));
        QVERIFY(stage.has("Instead of the shipped: Brachypelma hamorii"));
        QVERIFY(stage.has("Give your own away"));
        stage.click("Undo");
        QTRY_VERIFY(!stage.has("Give your own away"));
    }
};

QTEST_MAIN(RulePages)
#include "tst_rule_pages.moc"
