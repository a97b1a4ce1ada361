// The desk: the book in its own thread, answers in this one.
#include <QSignalSpy>

#include "viewmodels/bookcase.h"
#include "viewmodels/deeds.h"
#include "viewmodels/desk_fixture.h"

using namespace burrow;
using namespace burrow::test;

class TestDesk : public QObject {
    Q_OBJECT

private slots:
    void opensAndShows() {
        DeskFixture at;
        QSignalSpy states(&at.desk, &Desk::stateChanged);
        at.openRoom();
        QCOMPARE(at.desk.state(), Desk::State::Open);
        QCOMPARE(at.desk.roomName(), QString("Kiln Row"));
        QCOMPARE(at.desk.room()->residents().size(), 4U);
        QCOMPARE(states.count(), 2);  // opening, open
    }

    void refusesInWords() {
        DeskFixture at;
        at.desk.open(at.folder.path() / "none.book");
        QCOMPARE(at.desk.state(), Desk::State::Opening);
        QTRY_COMPARE(at.desk.state(), Desk::State::Refused);
        QVERIFY(at.desk.refusal().contains("none.book"));
        QVERIFY(!at.desk.room());
        at.openRoom();  // another try works
        QCOMPARE(at.desk.state(), Desk::State::Open);
        QVERIFY(at.desk.refusal().isEmpty());
    }

    void writesAndSaysSo() {
        DeskFixture at;
        at.openRoom();
        const auto before = at.desk.room();
        const auto resident = residentOf(at.desk, at.id(at.hamorii));
        logFact(at.desk, this, *resident, usualFeeding(*resident, at.desk));
        at.settle();
        QCOMPARE(at.desk.doneTag(), QString("214"));
        QVERIFY(at.desk.doneText().startsWith("took 1 "));
        QVERIFY(at.desk.room() != before);
        // Only who was touched is new; the others are shared with the room before.
        QVERIFY(at.desk.room()->find(at.hamorii) != before->find(at.hamorii));
        QVERIFY(at.desk.room()->find(at.pulchra) == before->find(at.pulchra));
        QCOMPARE(at.history(at.hamorii).front().body.outcome, Outcome::ate);
    }

    void undoesWhatTheSlotSays() {
        DeskFixture at;
        at.openRoom();
        const auto resident = residentOf(at.desk, at.id(at.hamorii));
        const auto before = at.history(at.hamorii).size();
        logFact(at.desk, this, *resident, {at.hamorii, FactKind::watered, {}, {}});
        at.settle();
        QSignalSpy written(&at.desk, &Desk::written);
        at.desk.undo();
        at.settle();
        QCOMPARE(written.count(), 1);
        QVERIFY(at.desk.doneText().isEmpty());
        QCOMPARE(at.history(at.hamorii).size(), before);
    }

    void troubleIsShownAndNothingIsLost() {
        DeskFixture at;
        at.openRoom();
        const auto resident = residentOf(at.desk, at.id(at.hamorii));
        bool told = false;
        logFact(at.desk, this, *resident, {at.hamorii, FactKind::offered, {}, {}},
                [&](const Result<ChangeSet>& done) { told = !done; });
        at.settle();
        QVERIFY(told);
        QVERIFY(at.desk.trouble().contains("outcome"));
        QVERIFY(at.desk.doneText().isEmpty());
        logFact(at.desk, this, *resident, {at.hamorii, FactKind::watered, {}, {}});
        at.settle();
        QVERIFY(at.desk.trouble().isEmpty());
    }

    void whoHasGoneIsNotTold() {
        DeskFixture at;
        at.openRoom();
        bool told = false;
        {
            QObject context;
            const auto resident = residentOf(at.desk, at.id(at.hamorii));
            logFact(at.desk, &context, *resident, {at.hamorii, FactKind::watered, {}, {}},
                    [&](const Result<ChangeSet>&) { told = true; });
        }
        at.settle();
        QVERIFY(!told);
        QCOMPARE(at.history(at.hamorii).front().kind, FactKind::watered);  // but it is written
    }

    void seesWhatOthersWrote() {
        DeskFixture at;
        at.openRoom();
        SystemRandom random;
        auto other =
            Book::open(at.path, storage::Access::readWrite, {at.clock, random, Zone::utc()})
                .value();
        other.record(FactDraft{at.hamorii, FactKind::watered, {}, {}}).value();
        at.desk.refresh();
        at.settle();
        QCOMPARE(at.desk.room()->find(at.hamorii)->kept.digest.lastWatered, at.desk.today());
    }

    void aNewDayIsPlannedAnew() {
        DeskFixture at;
        at.openRoom();
        QCOMPARE(at.desk.room()->find(at.pulchra)->plan.of(Care::feed).state, State::hold);
        at.clock.set({fridayEvening.ms + 20 * msPerDay});
        at.desk.refresh();
        at.settle();
        QCOMPARE(at.desk.room()->find(at.pulchra)->plan.of(Care::feed).state, State::due);
    }

    void askingWithoutABookIsAnswered() {
        DeskFixture at;
        QString id;
        at.desk.ask<int>(
            this, [](Book&) -> Result<int> { return 1; },
            [&](const Result<int>& answer) {
                id = QString::fromStdString(answer.error().message.id);
            });
        QTRY_COMPARE(id, QString("book.noneOpen"));
    }

    void endsWhileBusy() {
        for (int i = 0; i < 20; ++i) {
            DeskFixture at;
            at.openRoom();
            const auto resident = residentOf(at.desk, at.id(at.hamorii));
            for (int k = 0; k < 5; ++k) {
                logFact(at.desk, this, *resident, {at.hamorii, FactKind::watered, {}, {}});
            }
        }
    }

    // --- the bookcase --------------------------------------------------------------------------

    void booksAreNamedAfterTheirRoom() {
        DeskFixture at;
        Settings settings(QString::fromStdString((at.folder.path() / "s.ini").string()));
        Bookcase bookcase(at.desk, settings, at.folder.path() / "books", {});
        for (const char* name : {"kiln-row.book", "kiln-row-2.book"}) {
            bookcase.startBook("Kiln Row!", "KR");
            at.settle();
            QTRY_COMPARE(at.desk.state(), Desk::State::Open);
            QCOMPARE(at.desk.bookPath().filename().string(), std::string(name));
            QVERIFY(settings.lastBook().endsWith(name));
        }
    }

    void theDemoIsMadeOnceAndLeft() {
        DeskFixture at;
        Settings settings(QString::fromStdString((at.folder.path() / "s.ini").string()));
        std::atomic<int> made = 0;
        Bookcase bookcase(
            at.desk, settings, at.folder.path() / "books",
            [&](const std::filesystem::path& path) -> Done {
                ++made;
                SystemRandom random;
                const auto book = Book::create(path, "Demo", "D", {at.clock, random, Zone::utc()});
                if (!book) return failAs(book);
                return {};
            });
        bookcase.startBook("Mine", "M");
        QTRY_COMPARE(at.desk.state(), Desk::State::Open);
        for (int i = 0; i < 2; ++i) {
            bookcase.openDemo();
            QTRY_VERIFY(at.desk.isDemo() && at.desk.state() == Desk::State::Open);
            QCOMPARE(at.desk.roomName(), QString("Demo"));
            bookcase.leaveDemo();
            QTRY_COMPARE(at.desk.roomName(), QString("Mine"));
            QVERIFY(!at.desk.isDemo());
        }
        QCOMPARE(made.load(), 1);
    }

    void settingsStay() {
        const ScratchFolder folder;
        const auto file = QString::fromStdString((folder.path() / "s.ini").string());
        {
            Settings settings(file);
            QVERIFY(settings.scanNext() && !settings.daylight());
            settings.setDaylight(true);
            settings.setTextScale(9);
            settings.setUndoTime(20'000);
        }
        const Settings again(file);
        QVERIFY(again.daylight());
        QCOMPARE(again.textScale(), 2.0);
        QCOMPARE(again.undoTime(), 20'000);
    }
};

QTEST_GUILESS_MAIN(TestDesk)
#include "tst_desk.moc"
