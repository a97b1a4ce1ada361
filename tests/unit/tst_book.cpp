// The book: what is written stays, what is refused leaves no trace.
#include <QtTest>

#include <atomic>
#include <fstream>
#include <thread>

#include "journal/check.h"
#include "journal/digest_codec.h"
#include "journal/hlc.h"
#include "journal/rows.h"
#include "support/book.h"

using namespace burrow;
using namespace burrow::test;

namespace {

FactBody outcome(Outcome value) {
    FactBody body;
    body.outcome = value;
    return body;
}

std::string bytesOfFile(const std::filesystem::path& path) {
    std::ifstream file(path, std::ios::binary);
    return {std::istreambuf_iterator<char>(file), {}};
}

}  // namespace

class TestBookFile : public QObject {
    Q_OBJECT

private slots:
    void remembersAfterReopening() {
        TestBook room;
        const auto subject = room.add("214", "Brachypelma hamorii");
        room.log(subject, FactKind::offered, outcome(Outcome::ate));
        auto again = Book::open(room.book.path(), storage::Access::readWrite, room.surroundings());
        QVERIFY(again);
        QCOMPARE(again->device(), room.book.device());
        const auto found = subjectsNumbered(*again, "KR-214").value();
        QCOMPARE(found.size(), 1U);
        QCOMPARE(kept(*again, found.front()).value()->digest.lastAccepted->outcome, Outcome::ate);
        QCOMPARE(roomInfo(*again)->name, std::string("Kiln Row"));
    }

    void findsNumbersAsPeopleTypeThem() {
        TestBook room;
        const auto subject = room.add("087", "Poecilotheria regalis");
        for (const char* typed : {"087", "87", "KR-087", "kr-87", " 087 "}) {
            const auto found = subjectsNumbered(room.book, typed).value();
            QVERIFY2(found == std::vector{subject}, typed);
        }
        QVERIFY(subjectsNumbered(room.book, "88")->empty());
        QVERIFY(subjectsNumbered(room.book, "")->empty());
        QCOMPARE(nextNumber(room.book).value(), std::string("088"));
    }

    void entriesAreOrderedByHybridClock() {
        TestBook room;
        const auto subject = room.add("001", "Grammostola pulchra");
        room.clock.set({fridayEvening.ms - 3'600'000});  // the phone's clock is set back
        room.log(subject, FactKind::watered);
        const auto entries = entriesOf(room);
        for (std::size_t i = 1; i < entries.size(); ++i) {
            QVERIFY(entries[i - 1].hlc < entries[i].hlc);
            QCOMPARE(entries[i].seq, entries[i - 1].seq + 1);
        }
        QCOMPARE(hlc::milliseconds(entries.back().hlc), fridayEvening.ms);
    }

    void entriesCannotBeChanged() {
        TestBook room;
        room.add("001", "Grammostola pulchra");
        QVERIFY(!room.book.connection().execute("UPDATE entry SET body = '{}'"));
        QVERIFY(!room.book.connection().execute("DELETE FROM entry"));
        QVERIFY(check(room.book)->isSound());
    }

    void oneBadDraftKeepsNothing() {
        TestBook room;
        const auto subject = room.add("001", "Grammostola pulchra");
        const auto before = entriesOf(room).size();
        const std::vector<Draft> drafts{FactDraft{subject, FactKind::watered, {}, {}},
                                        FactDraft{subject, FactKind::offered, {}, {}}};
        const auto refused = room.book.record(drafts);
        QCOMPARE(refused.error().message.id, std::string("field.missing"));
        QCOMPARE(entriesOf(room).size(), before);
        QVERIFY(!room.kept(subject).digest.lastWatered);
        const auto stranger = room.book.record(FactDraft{SubjectId{}, FactKind::watered, {}, {}});
        QCOMPARE(stranger.error().message.id, std::string("subject.missing"));
    }

    void undoTakesBackOneTapAtATime() {
        TestBook room;
        const auto subject = room.add("001", "Grammostola pulchra");
        room.log(subject, FactKind::watered);
        FactBody sexed;
        sexed.sex = Sex::female;
        room.log(subject, FactKind::sexed, sexed);  // sets the sex as well: one tap, two entries
        QCOMPARE(room.kept(subject).subject.sex, Sex::female);
        QCOMPARE(room.book.undo()->second.size(), 2U);
        QCOMPARE(room.kept(subject).subject.sex, Sex::unknown);
        QVERIFY(room.kept(subject).digest.lastWatered.has_value());
        QCOMPARE(room.book.undo()->second.front().kind, std::string("watered"));
        QVERIFY(!room.kept(subject).digest.lastWatered);
        QVERIFY(room.book.undo());  // the animal itself
        QCOMPARE(room.book.undo().error().message.id, std::string("book.nothingToUndo"));
        QCOMPARE(roomInfo(room.book)->name, std::string("Kiln Row"));
    }

    void amendmentsCountFromTheLast() {
        TestBook room;
        const auto subject = room.add("001", "Grammostola pulchra");
        const auto fed = room.log(subject, FactKind::offered, outcome(Outcome::ate)).entries[0];
        room.book.record(AmendDraft{fed, outcome(Outcome::refused), std::nullopt}).value();
        QCOMPARE(room.kept(subject).digest.refusalsInARow, 1);
        room.book
            .record(
                AmendDraft{fed, outcome(Outcome::part), Instant{fridayEvening.ms - 2 * msPerDay}})
            .value();
        QCOMPARE(room.kept(subject).digest.lastAccepted->outcome, Outcome::part);
        QCOMPARE(room.kept(subject).digest.lastAccepted->day, room.surroundings().today() - 2);
        room.book.undo().value();
        QCOMPARE(room.kept(subject).digest.refusalsInARow, 1);
        room.book.undo().value();
        QCOMPARE(room.kept(subject).digest.lastAccepted->outcome, Outcome::ate);
        QVERIFY(check(room.book)->isSound());
    }

    void lateEntriesTakeTheirPlace() {
        TestBook room;
        const auto subject = room.add("001", "Grammostola pulchra");
        room.log(subject, FactKind::offered, outcome(Outcome::ate));
        room.log(subject, FactKind::offered, outcome(Outcome::refused),
                 Instant{fridayEvening.ms - 5 * msPerDay});
        QCOMPARE(room.kept(subject).digest.refusalsInARow, 0);
        QCOMPARE(burrow::history(room.book, subject, 10)->back().body.outcome, Outcome::refused);
    }

    void groupsEndWithTheLast() {
        TestBook room;
        const auto group = room.add("260", "Neoholothele incei", Form::group, 3);
        FactBody two;
        two.count = 2;
        room.log(group, FactKind::died, two);
        QCOMPARE(room.kept(group).subject.headcount, 1);
        QCOMPARE(room.kept(group).subject.standing, Standing::here);
        room.log(group, FactKind::died);
        QCOMPARE(room.kept(group).subject.standing, Standing::dead);
    }

    void editsChangeOnlyWhatDiffers() {
        TestBook room;
        const auto id = room.add("001", "Grammostola pulchra");
        auto before = room.kept(id).subject;
        auto after = before;
        after.species = "Grammostola pulchripes";
        after.sex = Sex::male;
        auto changed = changedFields(before, after);
        QCOMPARE(changed.size(), 2U);
        room.book.record(SetDraft{ThingType::subject, id.uuid, changed}).value();
        QCOMPARE(room.kept(id).subject, after);
        changed = changedFields(after, before);
        QVERIFY(changed.at("sex").is_null());
        room.book.record(SetDraft{ThingType::subject, id.uuid, changed}).value();
        QCOMPARE(room.kept(id).subject, before);
    }

    void tagsFollowTheLastBinding() {
        TestBook room;
        const auto first = room.add("001", "Grammostola pulchra");
        const auto second = room.add("002", "Grammostola pulchra");
        for (const auto subject : {first, second}) {
            const Tag tag{"7Q2MZX89", Millimetres{20}, subject, std::nullopt};
            room.book.record(SetDraft{ThingType::tag, tagThing(tag.code), toFields(tag)}).value();
        }
        QCOMPARE(burrow::tag(room.book, "7Q2MZX89").value()->subject, second);
        QVERIFY(!room.kept(first).tagCode);
        QCOMPARE(*room.kept(second).tagCode, std::string("7Q2MZX89"));
        room.book.undo().value();
        QCOMPARE(burrow::tag(room.book, "7Q2MZX89").value()->subject, first);
    }

    void badBooks_data() {
        QTest::addColumn<QString>("what");
        QTest::addColumn<QString>("message");
        QTest::newRow("missing") << "missing"
                                 << "book.missing";
        QTest::newRow("folder") << "folder"
                                << "book.notAFile";
        QTest::newRow("empty") << "empty"
                               << "book.notABook";
        QTest::newRow("text") << "text"
                              << "book.notABook";
        QTest::newRow("other database") << "other"
                                        << "book.notABook";
        QTest::newRow("newer") << "newer"
                               << "book.newer";
        QTest::newRow("cut") << "cut"
                             << "book.damaged";
        QTest::newRow("write-protected") << "protected"
                                         << "book.readOnly";
    }
    void badBooks() {
        QFETCH(QString, what);
        QFETCH(QString, message);
        TestBook room;
        room.add("001", "Grammostola pulchra");
        must(room.book.connection().execute("PRAGMA wal_checkpoint(TRUNCATE)"));
        const auto path = room.folder.path() / "bad.book";
        const auto whole = bytesOfFile(room.book.path());
        const auto write = [&](const std::string& bytes) {
            std::ofstream(path, std::ios::binary) << bytes;
        };
        if (what == "folder") std::filesystem::create_directory(path);
        if (what == "empty") write("");
        if (what == "text") write(std::string(5000, 'x'));
        if (what == "cut") write(whole.substr(0, whole.size() / 3));
        if (what == "protected") {
            write(whole);
            std::filesystem::permissions(path, std::filesystem::perms::owner_read);
        }
        if (what == "newer" || what == "other") {
            write(whole);
            auto raw = storage::Connection::open(path, storage::Access::readWrite).value();
            must(raw.execute(what == "newer" ? "PRAGMA user_version = 99"
                                             : "PRAGMA application_id = 7"));
        }
        const auto before = what == "folder" ? std::string() : bytesOfFile(path);
        auto opened = Book::open(path, storage::Access::readWrite, room.surroundings());
        if (what == "cut" && opened) {  // the header is whole: the first use finds the damage
            QCOMPARE(roster(*opened).error().message.id, message.toStdString());
        } else {
            QVERIFY(!opened);
            QCOMPARE(opened.error().message.id, message.toStdString());
        }
        if (what != "folder" && what != "missing") QVERIFY(bytesOfFile(path) == before);
    }

    void readsWhatMayNotBeWritten() {
        TestBook room;
        const auto subject = room.add("001", "Grammostola pulchra");
        must(room.book.connection().execute("PRAGMA wal_checkpoint(TRUNCATE)"));
        const auto path = room.folder.path() / "kept.book";
        std::filesystem::copy_file(room.book.path(), path);
        std::filesystem::permissions(path, std::filesystem::perms::owner_read);
        auto book = Book::open(path, storage::Access::readOnly, room.surroundings());
        QVERIFY(book);
        QCOMPARE(roster(*book)->size(), 1U);
        const auto refused = book->record(FactDraft{subject, FactKind::watered, {}, {}});
        QCOMPARE(refused.error().trouble, Trouble::readOnly);
    }

    void lockedBookSaysSo() {
        TestBook room;
        const auto subject = room.add("001", "Grammostola pulchra");
        auto other =
            Book::open(room.book.path(), storage::Access::readWrite, room.surroundings()).value();
        auto act = other.beginAct().value();
        const auto refused = room.book.record(FactDraft{subject, FactKind::watered, {}, {}});
        QCOMPARE(refused.error().trouble, Trouble::locked);
        QVERIFY(act.add(FactDraft{subject, FactKind::dampened, {}, {}}));
        QVERIFY(act.commit());
        QVERIFY(room.book.record(FactDraft{subject, FactKind::watered, {}, {}}));
        QVERIFY(check(room.book)->isSound());
    }

    void fullDeviceKeepsWhatWasThere() {
        TestBook room;
        const auto subject = room.add("001", "Grammostola pulchra");
        // SQLite reports the same code for its own page limit as for a device without room.
        const auto pages = room.book.connection().integer("PRAGMA page_count").value();
        must(
            room.book.connection().execute("PRAGMA max_page_count = " + std::to_string(pages + 2)));
        FactBody note;
        note.text = std::string(3900, 'x');
        Trouble trouble{};
        std::size_t logged = 0;
        for (int i = 0; i < 50 && trouble != Trouble::full; ++i) {
            const auto done = room.book.record(FactDraft{subject, FactKind::note, note, {}});
            if (done) ++logged;
            if (!done) trouble = done.error().trouble;
        }
        QCOMPARE(trouble, Trouble::full);
        QCOMPARE(burrow::history(room.book, subject, 100)->size(), logged);
        must(room.book.connection().execute("PRAGMA max_page_count = 100000"));
        QVERIFY(check(room.book)->isSound());
        QVERIFY(room.book.record(FactDraft{subject, FactKind::note, note, {}}));
    }

    void checkFindsAndRepairMends() {
        TestBook room;
        const auto subject = room.add("001", "Grammostola pulchra");
        room.log(subject, FactKind::offered, outcome(Outcome::ate));
        must(room.book.connection().execute("UPDATE subject SET species = 'Nobody nullus'"));
        auto report = check(room.book).value();
        QCOMPARE(report.findings.size(), 1U);
        QCOMPARE(report.findings[0].id, std::string("check.projection"));
        QVERIFY(repair(room.book));
        QVERIFY(check(room.book)->isSound());
        QCOMPARE(room.kept(subject).subject.species, std::string("Grammostola pulchra"));
    }

    /// What is checked stands still while another program writes.
    void checkIsSoundWhileOthersWrite() {
        TestBook room;
        const auto subject = room.add("001", "Grammostola pulchra");
        std::atomic<bool> isOver = false;
        std::thread writer([&] {
            SystemRandom random;
            auto other = Book::open(room.book.path(), storage::Access::readWrite,
                                    {room.clock, random, Zone::utc()})
                             .value();
            while (!isOver) other.record(FactDraft{subject, FactKind::watered, {}, {}}).value();
        });
        bool isSound = true;
        for (int i = 0; i < 20; ++i) isSound &= check(room.book)->isSound();
        isOver = true;
        writer.join();
        QVERIFY(isSound);
    }

    void digestBytesSurviveAndDamageShows() {
        TestBook room;
        const auto subject = room.add("001", "Grammostola pulchra");
        room.log(subject, FactKind::offered, outcome(Outcome::leftIn));
        room.log(subject, FactKind::moulted);
        const auto digest = room.kept(subject).digest;
        auto bytes = encodeDigest(digest);
        QCOMPARE(decodeDigest(bytes), digest);
        for (std::size_t size = 0; size < bytes.size(); ++size) {
            QVERIFY(!decodeDigest(std::span(bytes).first(size)));
        }
        bytes[0] = 250;
        QVERIFY(!decodeDigest(bytes));
    }

    void createRefusesToOverwrite() {
        TestBook room;
        const auto again = Book::create(room.book.path(), "Other", "OT", room.surroundings());
        QCOMPARE(again.error().message.id, std::string("book.exists"));
        const auto nameless =
            Book::create(room.folder.path() / "new.book", "", "KR", room.surroundings());
        QCOMPARE(nameless.error().message.id, std::string("book.needsName"));
        QVERIFY(!std::filesystem::exists(room.folder.path() / "new.book"));
    }

    /// A newer version's entries are kept and change nothing.
    void unknownKindsAreKept() {
        TestBook room;
        const auto subject = room.add("001", "Grammostola pulchra");
        must(room.book.connection().execute(
            "INSERT INTO entry (id, device, seq, act, hlc, kind, thing, body, recorded_at, "
            "happened_at, day, zone) SELECT randomblob(16), device, seq + 1, seq + 1, hlc + "
            "1, 'levitated', thing, '{\"mm\":3}', 0, 0, 0, 'UTC' FROM entry ORDER BY seq "
            "DESC LIMIT 1"));
        QVERIFY(check(room.book)->isSound());
        room.log(subject, FactKind::watered);
        QVERIFY(check(room.book)->isSound());
        QCOMPARE(entriesOf(room).size(), 4U);
    }

private:
    static std::vector<Entry> entriesOf(TestBook& room) {
        std::vector<Entry> all;
        auto numbered = entriesAfter(room.book.connection(), 0, 1000).value();
        for (auto& [n, entry] : numbered) all.push_back(std::move(entry));
        return all;
    }
};

QTEST_APPLESS_MAIN(TestBookFile)
#include "tst_book.moc"
