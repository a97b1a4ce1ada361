// The pages of homes and air, by real clicks on the invented room.
#include "journal/fields.h"
#include "pages/logger_file.h"

using namespace burrow;
using namespace burrow::test;

namespace {

/// An empty home that is large enough for any tarantula, and a tub that is too small for 001.
void crowd(test::Stage& stage) {
    const auto subject = stage.resident("001")->subject().id;
    Deed deed;
    deed.compose = [subject](Book& book) -> Result<std::vector<Draft>> {
        Enclosure large;
        large.name = "E-900";
        large.length = {900};
        large.width = {600};
        large.height = {500};
        Enclosure small;
        small.name = "E-901";
        small.length = small.width = {60};
        small.height = {80};
        small.substrate = {20};
        const auto smallId = book.newId();
        return std::vector<Draft>{
            SetDraft{ThingType::enclosure, book.newId(), toFields(large)},
            SetDraft{ThingType::enclosure, smallId, toFields(small)},
            SetDraft{ThingType::subject, subject.uuid, {{"enclosure", smallId.text()}}}};
    };
    stage.desk->act(stage.desk.get(), std::move(deed));
    stage.settle();
}

}  // namespace

class HomesAirPages : public QObject {
    Q_OBJECT

private slots:
    void aMoveIsLoggedFromThePlan() {
        test::Stage stage;
        crowd(stage);
        stage.go("RoomPage");
        stage.click("Homes");
        QCOMPARE(stage.page(), QString("HomesPage"));
        QTRY_VERIFY(stage.has("Moves, in this order"));
        const auto before = stage.resident("001")->subject().enclosure;
        // Whichever home the plan gives it: its button names the animal.
        QQuickItem* move = nullptr;
        for (auto* item : stage.hand->controls()) {
            if (item->property("text") == "It is moved") move = move == nullptr ? item : move;
        }
        QVERIFY(move != nullptr);
        stage.click(move);
        QTRY_VERIFY(!stage.desk->doneText().isEmpty());
        QVERIFY(stage.has("Undo"));
        const auto number = stage.desk->doneTag();
        QVERIFY(!number.isEmpty());
        stage.click("Undo");
        QTRY_VERIFY(stage.desk->doneText().isEmpty());
        QCOMPARE(stage.resident("001")->subject().enclosure, before);
    }

    void aReadingIsTypedForAShelf() {
        test::Stage stage;
        stage.go("RoomPage");
        stage.click("Air");
        QCOMPARE(stage.page(), QString("AirPage"));
        QTRY_VERIFY(!stage.has("Shelf B"));
        stage.click("Write a reading");
        stage.click("Shelf B");
        stage.fill("Temperature in °C", "24.5");
        stage.fill("Humidity in %", "650");
        stage.click("Keep");
        QTRY_VERIFY(stage.has("\"650\" is no relative humidity"));
        stage.fill("Humidity in %", "65");
        stage.click("Keep");
        QTRY_VERIFY(stage.has("24.5 °C, 65 % humidity"));
        stage.click("Shelf B");
        QCOMPARE(stage.page(), QString("AirPlacePage"));
        QTRY_VERIFY(stage.has("Dew point"));
        QVERIFY(stage.has("Day by day"));
    }

    void aLoggersFileIsTakenIn() {
        test::Stage stage;
        stage.go("AirPage");
        stage.click("Logger's file");
        QCOMPARE(stage.page(), QString("AirFilePage"));
        stage.click("Shelf B");
        stage.click("Choose a file");
        stage.chooseFiles({loggersFile(stage)});
        QTRY_VERIFY(stage.has("152 readings"));
        QVERIFY(stage.has("Nothing is written yet."));
        stage.click("Take it in");
        QTRY_COMPARE(stage.page(), QString("AirPlacePage"));
        QTRY_VERIFY(stage.has("Temperature"));
        QVERIFY(stage.has("From 1 May to 8 May"));
        stage.click("3 days");
        QTRY_VERIFY(stage.has("From 6 May to 8 May"));
        QVERIFY(stage.resident("005")->warmth.has_value());
        stage.click("Undo");
        QTRY_VERIFY(stage.has("Nothing was read in these days"));
    }
};

QTEST_MAIN(HomesAirPages)
#include "tst_homes_air_pages.moc"
