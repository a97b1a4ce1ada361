// What looks ahead, by real clicks: feeders counted and bought, feeding days chosen, an absence planned.
#include <QtTest>
#include <algorithm>

#include "pages/stage.h"

using namespace burrow::test;

namespace {

bool showsSheet(Stage& stage) {
    const auto controls = stage.hand->controls();
    return std::any_of(controls.begin(), controls.end(), [](const QQuickItem* item) {
        return item->property("text").toString().startsWith("The sheet");
    });
}

}  // namespace

class AheadPages : public QObject {
    Q_OBJECT

private slots:
    void feedersAreCountedAndBought() {
        Stage stage;
        stage.go("RoomPage");
        stage.click("Prey");
        QCOMPARE(stage.page(), QString("PreyPage"));
        QTRY_VERIFY_WITH_TIMEOUT(stage.has("80 of 100 cases"), 20'000);
        stage.click("28 days");
        stage.click("Other feeders");
        stage.click("Roaches, large");
        stage.fill("How many are there now", "30");
        stage.fill("What a pack costs", "6 for 25");
        stage.click("Keep");
        stage.settle();
        QVERIFY(stage.has("Roaches, large"));
        QCOMPARE(stage.desk->room()->info().other("price.roach.large"), std::string("6.00 for 25"));
        stage.click("Roaches, large: one less");
        stage.settle();
        QVERIFY(stage.desk->room()->info().other("feeders.roach.large").starts_with("29,"));
        stage.click("Undo");
        stage.settle();
        QVERIFY(stage.desk->room()->info().other("feeders.roach.large").starts_with("30,"));
    }

    void feedingDaysAreChosen() {
        Stage stage;
        stage.go("RoomPage");
        stage.click("Evenings");
        QCOMPARE(stage.page(), QString("EveningsPage"));
        QTRY_VERIFY_WITH_TIMEOUT(stage.has("Everyone's next meal"), 20'000);
        QTRY_VERIFY_WITH_TIMEOUT(stage.has("evenings in the next 14 days"), 20'000);
        stage.click("Your feeding days");
        for (const auto* day : {"Monday", "Wednesday", "Thursday", "Saturday", "Sunday"}) {
            stage.click(day);
        }
        stage.click("In one evening: more");
        stage.click("Done");
        stage.settle();
        QCOMPARE(stage.desk->room()->info().other("evenings.days"), std::string("tue fri"));
        QCOMPARE(stage.desk->room()->info().other("evenings.most"), std::string("5"));
        QVERIFY(stage.has("Tue, Fri, at most 5 in one evening"));
    }

    void anAbsenceIsPlannedAndPrinted() {
        Stage stage;
        stage.go("RoomPage");
        stage.click("Away");
        QCOMPARE(stage.page(), QString("AwayPage"));
        QTRY_VERIFY_WITH_TIMEOUT(stage.has("14 days away"), 20'000);
        stage.click("Be back a day earlier");
        QTRY_VERIFY(stage.has("13 days away"));
        stage.click("Whom else the sitter calls");
        stage.fill("Name and number", "The neighbour, 12");
        stage.click("Keep");
        stage.settle();
        QVERIFY(stage.has("The neighbour, 12"));
        stage.click("First day away");
        stage.fill("First day", "2026-05-10");
        stage.fill("Last day", "2026-05-12");
        stage.click("Keep");
        QTRY_VERIFY(stage.has("3 days away"));
        QTRY_VERIFY_WITH_TIMEOUT(showsSheet(stage), 20'000);
        stage.click("Save PDF");
        stage.chooseFolder(stage.folder.path());
        QTRY_VERIFY(stage.has("Saved as Kiln-Row-sitter-2026-05-10.pdf"));
    }
};

QTEST_MAIN(AheadPages)
#include "tst_ahead_pages.moc"
