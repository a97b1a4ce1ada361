// Reminders by real clicks: the page of their hours, and a tap on a note.
#include <QtTest>

#include "pages/stage.h"

using namespace burrow::test;

class RemindersPageTest : public QObject {
    Q_OBJECT

private slots:
    void hoursAreChosen() {
        Stage stage;
        stage.go("RoomPage");
        stage.click("Reminders");
        QCOMPARE(stage.page(), QString("RemindersPage"));
        QVERIFY(stage.has("18:30"));
        stage.click("Half an hour later for the round");
        QCOMPARE(stage.reminders->roundTime(), QString("19:00"));
        stage.click("Quiet half an hour earlier");
        stage.click("Quiet ends half an hour earlier");
        QVERIFY(stage.has("21:00") && stage.has("07:30"));
        stage.click("Remind me");
        QVERIFY(!stage.reminders->isOn());
        QVERIFY(!stage.has("21:00"));
    }

    void aTapOnANoteOpensWhatIsDue() {
        Stage stage;  // half past seven: the round has been said
        QTRY_VERIFY(!stage.notifier.notes().empty());
        stage.go("RoomPage");
        stage.notifier.tap("round");
        stage.settle();
        QCOMPARE(stage.page(), QString("PlacesPage"));
        QVERIFY(stage.first("DuePage") != nullptr);
    }
};

QTEST_MAIN(RemindersPageTest)
#include "tst_reminders_page.moc"
