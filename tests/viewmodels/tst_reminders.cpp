// Reminders in the app: when they wake, what they say, what they remember, and what a tap does.
#include <QSignalSpy>

#include "fake/fake_notifier.h"
#include "files/reminder_file.h"
#include "viewmodels/desk_fixture.h"
#include "viewmodels/reminders.h"

using namespace burrow;
using namespace burrow::test;

namespace {

constexpr std::int64_t hour = 3'600'000;

/// The fixture's room at noon of its Friday, and a device that shows notes.
struct Device {
    Device() {
        at.clock.set({fridayEvening.ms - fridayEvening.ms % msPerDay + 12 * hour});
        at.openRoom();
    }

    std::unique_ptr<Reminders> start() {
        auto reminders =
            std::make_unique<Reminders>(at.desk, settings, loadReminderRules().value());
        reminders->setNotifier(&notifier);
        decide(*reminders);
        return reminders;
    }
    void decide(Reminders& reminders) {
        QSignalSpy decided(&reminders, &Reminders::decided);
        reminders.look();
        QVERIFY(QTest::qWaitFor([&] { return !decided.isEmpty(); }));
        // A note that was shown makes it look again.
        QTest::qWait(20);
    }
    void later(Reminders& reminders, std::int64_t ms) {
        at.clock.set({at.clock.now().ms + ms});
        at.desk.refresh();
        at.settle();
        decide(reminders);
    }

    DeskFixture at;
    FakeNotifier notifier;
    Settings settings{QString::fromStdString((at.folder.path() / "settings.ini").string())};
};

}  // namespace

class TestReminders : public QObject {
    Q_OBJECT

private slots:
    void onceForTheRound() {
        Device device;
        const auto reminders = device.start();
        QVERIFY(device.notifier.notes().empty());
        QCOMPARE(reminders->state(), QString("Next: today at 18:30"));
        QCOMPARE(reminders->nextTitle(), QString("Kiln Row: the round"));
        QCOMPARE(reminders->nextText(),
                 QString("1 to feed, one other thing to do, 1 held, A first"));
        device.later(*reminders, 6 * hour + hour / 2);
        QCOMPARE(device.notifier.notes().size(), std::size_t{1});
        const auto& note = device.notifier.notes().front();
        QCOMPARE(note.title, QString("Kiln Row: the round"));
        QCOMPARE(note.openText, QString("Show what is due"));
        QVERIFY(!note.isUrgent);
        device.later(*reminders, hour);
        QCOMPARE(device.notifier.notes().size(), std::size_t{1});
        QCOMPARE(reminders->state(), QString("Nothing to be reminded of now"));
        // The next day has a round of its own.
        device.later(*reminders, 23 * hour);
        QStringList titles;
        for (const auto& each : device.notifier.notes()) titles.append(each.title);
        // What was left in since yesterday is told apart.
        QCOMPARE(titles, (QStringList{"Kiln Row: the round", "Kiln Row: take prey out",
                                      "Kiln Row: the round"}));
    }

    void whatWasToldIsKeptOnTheDevice() {
        Device device;
        device.start();
        device.at.clock.set({device.at.clock.now().ms + 7 * hour});
        device.start();
        QCOMPARE(device.notifier.notes().size(), std::size_t{1});
        const auto again = device.start();  // the program was started anew
        QCOMPARE(device.notifier.notes().size(), std::size_t{1});
        QCOMPARE(again->told().size(), std::size_t{1});
    }

    void nobodyShowsIt() {
        Device device;
        device.notifier.setNobodyThere(true);
        device.at.clock.set({device.at.clock.now().ms + 7 * hour});
        const auto reminders = device.start();
        QVERIFY(device.notifier.notes().empty());
        QVERIFY(reminders->state().startsWith("Nothing on this device shows notifications"));
        QVERIFY(reminders->told().empty());
        device.notifier.setNobodyThere(false);
        device.decide(*reminders);  // an hour later, by its own alarm
        QCOMPARE(device.notifier.notes().size(), std::size_t{1});
        QCOMPARE(reminders->state(), QString("Nothing to be reminded of now"));
    }

    void aTapAsksForWhatIsDue() {
        Device device;
        device.at.clock.set({device.at.clock.now().ms + 7 * hour});
        const auto reminders = device.start();
        QSignalSpy wanted(reminders.get(), &Reminders::dueWanted);
        device.notifier.tap("round");
        QCOMPARE(wanted.count(), 1);
        QVERIFY(device.notifier.notes().empty());  // it was taken away
    }

    void theKeepersHours() {
        Device device;
        auto reminders = device.start();
        reminders->moveRound(-12);
        QCOMPARE(reminders->roundTime(), QString("12:30"));
        reminders->moveRound(-26);
        QCOMPARE(reminders->roundTime(), QString("23:30"));
        device.decide(*reminders);
        QCOMPARE(reminders->state(), QString("Next: today at 21:29"));  // before it is quiet
        reminders->moveQuietFrom(1);
        reminders->moveQuietUntil(-3);
        QCOMPARE(reminders->quietFrom(), QString("22:00"));
        QCOMPARE(reminders->quietUntil(), QString("06:30"));
        reminders = device.start();
        QCOMPARE(reminders->roundTime(), QString("23:30"));
        QCOMPARE(reminders->quietFrom(), QString("22:00"));
        reminders->setOn(false);
        device.later(*reminders, 9 * hour);
        QVERIFY(device.notifier.notes().empty());
        QCOMPARE(reminders->state(), QString("Off"));
        QVERIFY(!device.start()->isOn());
    }

    void theInventedRoomSaysNothing() {
        Device device;
        device.at.desk.open(device.at.path, true);
        device.at.settle();
        device.at.clock.set({device.at.clock.now().ms + 7 * hour});
        const auto reminders = device.start();
        QVERIFY(device.notifier.notes().empty());
        QCOMPARE(reminders->state(), QString("None for the invented room"));
    }
};

QTEST_MAIN(TestReminders)
#include "tst_reminders.moc"
