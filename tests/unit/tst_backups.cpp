// Backups and going back to them: nothing that was ever acknowledged is out of reach.
#include <QtTest>

#include <fstream>
#include <map>
#include <set>
#include <thread>

#include "base/busy_folder.h"
#include "journal/check.h"
#include "journal/restore.h"
#include "journal/rows.h"
#include "support/book.h"

using namespace burrow;
using namespace burrow::test;
namespace fs = std::filesystem;

namespace {

std::vector<std::string> filesIn(const fs::path& folder) {
    std::vector<std::string> names;
    if (!fs::exists(folder)) return names;
    for (const auto& file : fs::directory_iterator(folder)) {
        names.push_back(file.path().filename().string());
    }
    std::sort(names.begin(), names.end());
    return names;
}

void damage(const fs::path& file) {
    std::fstream bytes(file, std::ios::in | std::ios::out | std::ios::binary);
    const auto size = static_cast<std::int64_t>(fs::file_size(file));
    for (std::int64_t at = 4096; at < size; at += 700) {
        bytes.seekp(at);
        bytes.put('\x5A');
    }
}

class Room : public TestBook {
public:
    explicit Room(std::uint64_t seed = 1) : TestBook(seed) {
        subject = add("214", "Brachypelma hamorii");
    }

    Backups backups(std::uint64_t freeBytes = 1'000'000'000) {
        return {book.path(), clock, Zone::utc(),
                [freeBytes](const fs::path&) { return freeBytes; }};
    }
    void water() { log(subject, FactKind::watered); }
    void passDays(int days) { clock.set({clock.now().ms + days * msPerDay}); }
    std::size_t waterings() { return burrow::history(book, subject, wholeHistory)->size(); }
    /// What is in the book's own file, with nothing beside it.
    void settle() { must(book.connection().execute("PRAGMA wal_checkpoint(TRUNCATE)")); }

    SubjectId subject;
};

std::vector<EntryId> entriesOf(const fs::path& file) {
    auto connection = storage::Connection::open(file, storage::Access::readOnly).value();
    std::vector<EntryId> ids;
    for (const auto& [n, entry] : got(entriesAfter(connection, 0, wholeHistory))) {
        ids.push_back(entry.id);
    }
    return ids;
}

}  // namespace

class TestBackups : public QObject {
    Q_OBJECT

private slots:
    void oneFileWithAllOfTheBook() {
        Room room;
        room.water();
        const auto made = room.backups().make(BackupReason::asked).value();
        QCOMPARE(made.file.filename().string(), std::string("20260508T191400Z-asked.book"));
        QCOMPARE(filesIn(room.backups().folder()),
                 std::vector<std::string>(1, made.file.filename().string()));
        QCOMPARE(fs::file_size(made.file), made.bytes);
        const auto contents = contentsOf(made.file).value();
        QCOMPARE(contents.entries, 3);
        QCOMPARE(contents.subjects, 1);
        QCOMPARE(contents.book, room.book.id());
        QCOMPARE(contents.lastRecordedAt, std::optional(fridayEvening));
        auto copy = Book::open(made.file, storage::Access::readOnly, room.surroundings()).value();
        QVERIFY(check(copy)->isSound());
        QCOMPARE(entriesOf(made.file), entriesOf(room.book.path()));
        const auto second = room.backups().make(BackupReason::asked).value();
        QCOMPARE(second.file.filename().string(), std::string("20260508T191400Z-asked-2.book"));
        QCOMPARE(room.backups().list()->size(), 2U);
    }

    void dueOnceADay_data() {
        QTest::addColumn<QStringList>("there");
        QTest::addColumn<QString>("due");
        const auto row = [](const char* title, const QStringList& there, const char* due) {
            QTest::newRow(title) << there << due;
        };
        row("first", {}, "weekly");
        row("today's is there", {"20260508T040000Z-daily.book"}, "");
        row("today's weekly is there", {"20260508T040000Z-weekly.book"}, "");
        row("yesterday's weekly", {"20260507T235959Z-weekly.book"}, "daily");
        row("six days ago", {"20260502T120000Z-weekly.book"}, "daily");
        row("seven days ago", {"20260501T120000Z-weekly.book"}, "weekly");
        row("asked for today", {"20260508T040000Z-asked.book"}, "weekly");
        row("only in the future", {"20990101T000000Z-weekly.book"}, "weekly");
        row("no backups",
            {"20260508-daily.book", "20260508T040000Z-dailyish.book", "notes.txt",
             "20261308T040000Z-daily.book", "20260508T040000Z-daily.book.part"},
            "weekly");
    }
    void dueOnceADay() {
        QFETCH(QStringList, there);
        QFETCH(QString, due);
        Room room;
        fs::create_directories(room.backups().folder());
        for (const auto& name : there) {
            std::ofstream(room.backups().folder() / name.toStdString()) << "x";
        }
        const auto reason = room.backups().due().value();
        QCOMPARE(reason ? QString::fromStdString(std::string(name(*reason))) : QString(), due);
    }

    /// A program that was killed while it wrote a backup leaves one without its name.
    void whatWasLeftUnfinishedGoes() {
        Room room;
        const auto folder = room.backups().folder();
        const auto first = room.backups().make(BackupReason::asked)->file.filename().string();
        const std::string part = "20260401T040000Z-asked.book.part";
        std::ofstream(folder / part) << "x";
        std::ofstream(folder / (part + "-journal")) << "x";
        {
            // Another program is at it: it may be that one's.
            const BusyFolder busy(folder);
            std::ofstream(folder / part) << "x";
            room.passDays(1);
            QVERIFY(room.backups().make(BackupReason::asked));
            QVERIFY(fs::exists(folder / part));
        }
        room.passDays(1);
        QVERIFY(room.backups().make(BackupReason::asked));
        const auto left = filesIn(folder);
        QCOMPARE(left.size(), 3U);
        QCOMPARE(left[0], first);
        for (const auto& name : left) QVERIFY(name.ends_with("-asked.book"));
    }

    void twoMonthsKeepAFewOfEach() {
        Room room;
        for (int day = 0; day < 57; ++day, room.passDays(1)) {
            room.water();
            QVERIFY(room.backups().makeIfDue()->has_value());
            QVERIFY(!room.backups().makeIfDue()->has_value());
        }
        room.passDays(-1);
        std::map<BackupReason, std::vector<int>> ages;
        for (const auto& backup : got(room.backups().list())) {
            ages[backup.reason].push_back(room.surroundings().today() -
                                          Zone::utc().dayOf(backup.madeAt));
        }
        QCOMPARE(ages[BackupReason::daily], (std::vector{1, 2, 3}));
        QCOMPARE(ages[BackupReason::weekly], (std::vector{0, 7, 14, 21}));
        QCOMPARE(filesIn(room.backups().folder()).size(), 7U);
    }

    void nothingNewIsNotKeptTwice() {
        Room room;
        QVERIFY(room.backups().makeIfDue()->has_value());
        room.passDays(3);
        QVERIFY(!room.backups().makeIfDue()->has_value());
        room.water();
        QVERIFY(room.backups().makeIfDue()->has_value());
    }

    /// A clock that was set wrong once must not fill the places of those to come.
    void namesOfTheFutureGoFirst() {
        Room room;
        room.clock.set({fridayEvening.ms + 70 * 365 * msPerDay});
        const auto strange = room.backups().make(BackupReason::asked).value();
        room.clock.set(fridayEvening);
        for (int i = 0; i < 3; ++i, room.passDays(1)) {
            room.backups().make(BackupReason::asked).value();
        }
        QVERIFY(!fs::exists(strange.file));
        QCOMPARE(room.backups().list()->size(), 3U);
    }

    void othersFilesStay() {
        Room room;
        const auto folder = room.backups().folder();
        fs::create_directories(folder);
        std::ofstream(folder / "20200101T000000Z-daily.book.bak") << "mine";
        std::ofstream(folder / "holiday.book") << "mine";
        for (int i = 0; i < 9; ++i, room.passDays(1)) {
            room.backups().make(BackupReason::daily).value();
        }
        QCOMPARE(filesIn(folder).size(), 5U);
        QVERIFY(fs::exists(folder / "holiday.book"));
    }

    void littleRoomLetsTheOldestGo() {
        Room room;
        for (int i = 0; i < 10; ++i, room.passDays(1)) {
            room.water();
            room.backups().makeIfDue().value();
        }
        const auto before = room.backups().list().value();
        const auto oneMore = before.front().bytes;
        // Short of one copy: the oldest is enough.
        const auto made = room.backups(8'000'000).make(BackupReason::asked).value();
        const auto after = room.backups().list().value();
        QCOMPARE(after.size(), before.size());
        QVERIFY(!fs::exists(before.back().file));
        QCOMPARE(after.front().file, made.file);
        // Short of more than all the old ones take: they stay, and it says what is missing.
        const auto refused = room.backups(oneMore).make(BackupReason::asked);
        QCOMPARE(refused.error().trouble, Trouble::full);
        QCOMPARE(refused.error().message.id, std::string("backup.noRoom"));
        QCOMPARE(room.backups().list()->size(), after.size());
    }

    void theTwoNewestStayHoweverLittleRoomThereIs() {
        Room room;
        room.backups().make(BackupReason::weekly).value();
        room.passDays(1);
        room.backups().make(BackupReason::daily).value();
        QVERIFY(!room.backups(8'000'000).make(BackupReason::daily));
        QCOMPARE(room.backups().list()->size(), 2U);
    }

    void aDamagedBookDrivesNoBackupOut() {
        Room room;
        for (int i = 0; i < 5; ++i, room.passDays(1)) {
            room.water();
            room.backups().make(BackupReason::daily).value();
        }
        const auto before = filesIn(room.backups().folder());
        room.settle();
        damage(room.book.path());
        const auto refused = room.backups().make(BackupReason::daily);
        QVERIFY(!refused);
        QCOMPARE(refused.error().message.id, std::string("backup.damaged"));
        QCOMPARE(filesIn(room.backups().folder()), before);
    }

    void wholeWhileOthersWrite() {
        Room room;
        // Stops and joins when it goes, also where a check fails.
        std::jthread writer([&](const std::stop_token& isOver) {
            SystemRandom random;
            auto other = Book::open(room.book.path(), storage::Access::readWrite,
                                    {room.clock, random, Zone::utc()})
                             .value();
            while (!isOver.stop_requested()) {
                other.record(FactDraft{room.subject, FactKind::watered, {}, {}}).value();
            }
        });
        std::vector<Backup> made;
        for (int i = 0; i < 3; ++i)
            made.push_back(room.backups().make(BackupReason::asked).value());
        writer.request_stop();
        writer.join();
        for (const auto& backup : made) {
            auto copy = Book::open(backup.file, storage::Access::readOnly, room.surroundings());
            QVERIFY(check(*copy)->isSound());
        }
    }

    void goingBack() {
        Room room;
        room.water();
        const auto backup = room.backups().make(BackupReason::asked).value();
        const auto device = room.book.device();
        room.passDays(1);
        room.water();
        room.passDays(1);
        room.water();
        room.add("215", "Grammostola pulchra");
        const auto all = entriesOf(room.book.path());

        const auto preview = previewRestore(room.backups(), backup.file).value();
        QCOMPARE(preview.lost.entries, 3);
        QCOMPARE(preview.lost.things, 2);
        QCOMPARE(*preview.lost.from, room.surroundings().today() - 1);
        QCOMPARE(*preview.lost.to, room.surroundings().today());
        QCOMPARE(preview.gained.entries, 0);
        QCOMPARE(preview.current->subjects, 2);
        QCOMPARE(entriesOf(room.book.path()), all);  // looking changes nothing

        const auto restored = restore(room.backups(), backup.file, room.surroundings()).value();
        QCOMPARE(entriesOf(room.book.path()), entriesOf(backup.file));
        QCOMPARE(entriesOf(*restored.kept), all);
        QVERIFY(restored.device != device);
        // The book that was open all the while goes on with it, under the new device.
        QCOMPARE(room.waterings(), 1U);
        room.water();
        QCOMPARE(room.book.device(), restored.device);
        QVERIFY(check(room.book)->isSound());
        const auto again =
            Book::open(room.book.path(), storage::Access::readWrite, room.surroundings()).value();
        QCOMPARE(again.device(), restored.device);
        QCOMPARE(filesIn(room.backups().folder()).size(), 2U);  // no workpiece is left
        // And forth again: what was lost comes back.
        const auto forth = previewRestore(room.backups(), *restored.kept).value();
        QCOMPARE(forth.gained.entries, 3);
        QCOMPARE(forth.lost.entries, 1);
        QVERIFY(restore(room.backups(), *restored.kept, room.surroundings()));
        QCOMPARE(entriesOf(room.book.path()), all);
    }

    /// No device ever gives the same number to two entries, however often the book goes back.
    void numbersAreNeverGivenTwice() {
        Room room;
        std::map<std::pair<DeviceId, std::int64_t>, EntryId> given;
        const auto backup = room.backups().make(BackupReason::asked).value();
        std::int64_t lastStamp = 0;
        for (int round = 0; round < 4; ++round) {
            for (int i = 0; i <= round; ++i) room.water();
            for (const auto& [n, entry] :
                 got(entriesAfter(room.book.connection(), 0, wholeHistory))) {
                const auto [found, isNew] = given.try_emplace({entry.device, entry.seq}, entry.id);
                QCOMPARE(found->second, entry.id);
                if (isNew) lastStamp = std::max(lastStamp, entry.hlc);
            }
            QVERIFY(restore(room.backups(), backup.file, room.surroundings()));
            room.clock.set({room.clock.now().ms - 3'600'000});  // and the clock is set back
        }
        QCOMPARE(given.size(), 2U + 1 + 2 + 3 + 4);
    }

    void stampsStayAboveWhatTheBookHolds() {
        Room room;
        room.water();
        const auto backup = room.backups().make(BackupReason::asked).value();
        room.clock.set({room.clock.now().ms - 3'600'000});
        QVERIFY(restore(room.backups(), backup.file, room.surroundings()));
        room.water();
        const auto entries = entriesAfter(room.book.connection(), 0, 100).value();
        for (std::size_t i = 1; i < entries.size(); ++i) {
            QVERIFY(entries[i - 1].second.hlc < entries[i].second.hlc);
        }
    }

    void goingBackWhileOthersWrite() {
        Room room;
        const auto backup = room.backups().make(BackupReason::asked).value();
        std::set<EntryId> acknowledged;
        // Stops and joins when it goes, also where a check fails.
        std::jthread writer([&](const std::stop_token& isOver) {
            SystemRandom random;
            auto other = Book::open(room.book.path(), storage::Access::readWrite,
                                    {room.clock, random, Zone::utc()})
                             .value();
            while (!isOver.stop_requested()) {
                const auto done = other.record(FactDraft{room.subject, FactKind::watered, {}, {}});
                if (done) acknowledged.insert(done->entries[0]);
                if (!done && done.error().trouble != Trouble::locked) qFatal("writer");
            }
        });
        std::set<EntryId> found;
        for (int i = 0; i < 2; ++i) {
            const auto restored = restore(room.backups(), backup.file, room.surroundings());
            QVERIFY2(restored, restored ? "" : restored.error().message.id.c_str());
            const auto kept = entriesOf(*restored->kept);
            found.insert(kept.begin(), kept.end());
        }
        writer.request_stop();
        writer.join();
        const auto rest = entriesOf(room.book.path());
        found.insert(rest.begin(), rest.end());
        QVERIFY(!acknowledged.empty());
        for (const auto& id : acknowledged) QVERIFY(found.contains(id));
        QVERIFY(check(room.book)->isSound());
    }

    void refusesWhatIsNoBackupOfThisBook() {
        Room room;
        Room other(2);
        const auto foreign = other.backups().make(BackupReason::asked).value();
        const auto before = entriesOf(room.book.path());
        const auto refused = restore(room.backups(), foreign.file, room.surroundings());
        QCOMPARE(refused.error().message.id, std::string("restore.otherBook"));
        const auto mine = room.backups().make(BackupReason::asked).value();
        damage(mine.file);
        QCOMPARE(restore(room.backups(), mine.file, room.surroundings()).error().trouble,
                 Trouble::corrupt);
        std::ofstream(mine.file, std::ios::binary) << "no book at all";
        QCOMPARE(restore(room.backups(), mine.file, room.surroundings()).error().message.id,
                 std::string("restore.damaged"));
        QVERIFY(!restore(room.backups(), room.folder.path() / "none.book", room.surroundings()));
        QCOMPARE(entriesOf(room.book.path()), before);
        QVERIFY(check(room.book)->isSound());
    }

    void aDamagedOrMissingBookComesBack_data() {
        QTest::addColumn<QString>("what");
        for (const char* what : {"missing", "damaged", "text", "cut"}) QTest::newRow(what) << what;
    }
    void aDamagedOrMissingBookComesBack() {
        QFETCH(QString, what);
        ScratchFolder folder;
        FixedClock clock{fridayEvening};
        SeededRandom random(3);
        const auto path = folder.path() / "kiln-row.book";
        const Surroundings surroundings{clock, random, Zone::utc()};
        const Backups backups(path, clock, Zone::utc());
        {
            auto book = Book::create(path, "Kiln Row", "KR", surroundings).value();
            const auto made = backups.make(BackupReason::daily).value();
            static_cast<void>(made);
        }
        if (what == "missing") fs::remove(path);
        if (what == "damaged") damage(path);
        if (what == "text") std::ofstream(path) << std::string(5000, 'x');
        if (what == "cut") fs::resize_file(path, fs::file_size(path) / 2);
        const auto backup = backups.list()->front().file;
        const auto restored = restore(backups, backup, surroundings);
        QVERIFY2(restored, restored ? "" : restored.error().message.id.c_str());
        auto book = Book::open(path, storage::Access::readWrite, surroundings);
        QVERIFY(book);
        QVERIFY(check(*book)->isSound());
        QCOMPARE(entriesOf(path), entriesOf(backup));
        QCOMPARE(restored->kept.has_value(), what != "missing");
        QVERIFY(book->record(SetDraft{ThingType::book, book->id().uuid, {{"contact", "x"}}}));
    }

    /// What SQLite kept beside a book that somebody removed is not taken for the new one's.
    void aStrayJournalIsPutAside() {
        ScratchFolder folder;
        const auto path = folder.path() / "kiln-row.book";
        {
            Room old;
            old.water();
            fs::copy_file(old.book.path().string() + "-wal", path.string() + "-wal");
        }
        FixedClock clock{fridayEvening};
        SeededRandom random(9);
        auto book = Book::create(path, "Other", "OT", {clock, random, Zone::utc()});
        QVERIFY(book);
        QCOMPARE(roomInfo(*book)->name, std::string("Other"));
        QVERIFY(check(*book)->isSound());
        QCOMPARE(filesIn(Backups::folderFor(path)).size(), 1U);
    }

    void anUnwritableFolderIsSaid() {
        Room room;
        std::ofstream(room.backups().folder()) << "a file where the folder would stand";
        QVERIFY(!room.backups().make(BackupReason::asked));
        QVERIFY(!room.backups().list());
    }
};

QTEST_APPLESS_MAIN(TestBackups)
#include "tst_backups.moc"
