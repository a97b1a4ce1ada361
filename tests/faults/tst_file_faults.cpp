// The device fails at every single call by which core writes files: photos are named only when they are
// there, nothing unfinished stays, and what no entry names is swept.
#include <cerrno>

#include <QtTest>

#include <fstream>

#include "faults/faulty_calls.h"
#include "journal/check.h"
#include "room/chores.h"
#include "support/assets.h"
#include "support/book.h"

using namespace burrow;
using namespace burrow::test;
using namespace std::chrono_literals;
namespace fs = std::filesystem;

namespace {

/// Gives the picture back with its number, so that each photo is another one.
class PlainDeveloper final : public pictures::Developer {
public:
    Result<Developed> develop(std::span<const std::uint8_t> bytes,
                              const pictures::PictureInfo&) override {
        Bytes upright(bytes.begin(), bytes.end());
        upright.push_back(++number_);
        return Developed{upright, Bytes(100, number_), 8, 8};
    }
    Result<Bytes> reduce(std::span<const std::uint8_t> bytes, const pictures::PictureInfo&,
                         int) override {
        return Bytes(bytes.begin(), bytes.end());
    }

private:
    std::uint8_t number_ = 0;
};

/// A JPEG of one grey pixel row as far as inspect() looks (ISO/IEC 10918-1, annex B).
Bytes smallPicture(std::uint8_t number) {
    return {0xFF, 0xD8, 0xFF, 0xC0, 0, 11, 8, 0, 8,  0, 8,    1,      1,    0x11, 0,
            0xFF, 0xDA, 0,    8,    1, 1,  0, 0, 63, 0, 0x12, number, 0xFF, 0xD9};
}

std::vector<fs::path> filesUnder(const fs::path& folder) {
    std::vector<fs::path> files;
    if (!fs::exists(folder)) return files;
    for (const auto& entry : fs::recursive_directory_iterator(folder)) {
        if (entry.is_regular_file()) files.push_back(entry.path());
    }
    return files;
}

class PhotoRoom : public TestBook {
public:
    PhotoRoom() : store(pictures::Store::folderFor(book.path()), files) {
        subject = add("214", "Brachypelma hamorii");
    }

    /// Keeps a photo and names it.
    Done takePhoto(std::uint8_t number) {
        BURROW_TRY(const auto photo, store.keep(smallPicture(number), developer));
        FactBody body;
        body.picture = photo.picture;
        body.original = photo.original;
        body.role = PhotoRole::animal;
        BURROW_TRY(const auto changes,
                   book.record(FactDraft{subject, FactKind::photo, body, std::nullopt}));
        named.push_back(photo);
        static_cast<void>(changes);
        return {};
    }
    fs::path folder() const { return pictures::Store::folderFor(book.path()); }

    DeviceFiles files;
    PlainDeveloper developer;
    pictures::Store store;
    SubjectId subject;
    std::vector<pictures::KeptPhoto> named;
};

}  // namespace

class TestFileFaults : public QObject {
    Q_OBJECT

private slots:
    void photosWhateverFails_data() {
        QTest::addColumn<int>("call");
        QTest::addColumn<int>("error");
        QTest::addColumn<bool>("isShort");
        QTest::addColumn<int>("trouble");
        const auto row = [](const char* title, Call call, int error, bool isShort,
                            Trouble trouble) {
            QTest::newRow(title) << static_cast<int>(call) << error << isShort
                                 << static_cast<int>(trouble);
        };
        row("no room", Call::write, ENOSPC, false, Trouble::full);
        row("room for half", Call::write, ENOSPC, true, Trouble::full);
        row("over the quota", Call::write, EDQUOT, false, Trouble::full);
        row("write error", Call::write, EIO, false, Trouble::inputOutput);
        row("flush error", Call::fsync, EIO, false, Trouble::inputOutput);
        row("no room at the flush", Call::fsync, ENOSPC, false, Trouble::full);
        row("rename error", Call::rename, EIO, false, Trouble::inputOutput);
        row("cannot be made", Call::open, ENOSPC, false, Trouble::full);
        row("may not be made", Call::open, EROFS, false, Trouble::readOnly);
    }
    void photosWhateverFails() {
        QFETCH(int, call);
        QFETCH(int, error);
        QFETCH(bool, isShort);
        QFETCH(int, trouble);
        const auto words = englishWords();
        PhotoRoom room;
        must(room.takePhoto(1));
        int failed = 0;
        for (int n = 1;; ++n) {
            failCall(static_cast<Call>(call), n, error, isShort);
            const auto done = room.takePhoto(static_cast<std::uint8_t>(n + 1));
            if (!healCalls()) {
                QVERIFY(done);
                break;
            }
            ++failed;
            QVERIFY2(!done, std::to_string(n).c_str());
            QCOMPARE(static_cast<int>(done.error().trouble), trouble);
            QVERIFY(words.knows(done.error().message.id));
            for (const auto& file : filesUnder(room.folder())) {
                QVERIFY2(file.extension() != ".part", file.c_str());
            }
        }
        QVERIFY(failed >= 3);  // three files are written of each photo
        QVERIFY(sweepPhotos(room.book.path(), 0s).has_value());
        QCOMPARE(filesUnder(room.folder()).size(), room.named.size() * 3);
        for (const auto& photo : room.named) {
            QVERIFY(room.store.isIntact(photo.picture));
            QVERIFY(room.files.exists(room.store.thumbnailPath(photo.picture)));
            QVERIFY(room.files.exists(room.store.originalPath(photo.original)));
        }
        QVERIFY(check(room.book)->isSound());
    }

    /// What was written over stays until the new bytes are all there.
    void theOldFileStays() {
        const ScratchFolder folder;
        DeviceFiles files;
        const auto path = folder.path() / "rows.csv";
        must(files.write(path, bytesOf("old")));
        for (const auto call : {Call::open, Call::write, Call::fsync, Call::rename}) {
            failCall(call, 1, EIO);
            QVERIFY(!files.write(path, bytesOf("new")));
            QVERIFY(healCalls());
            QCOMPARE(slurp(path), std::string("old"));
            QCOMPARE(filesUnder(folder.path()).size(), 1U);
        }
    }

    /// A backup that could not be named is not there, and the book that could not be put back is as it
    /// was.
    void backupsWhateverFails() {
        PhotoRoom room;
        const Backups backups(room.book.path(), room.clock, Zone::utc());
        for (const auto call : {Call::rename, Call::fsync}) {
            failCall(call, 1, EIO);
            QVERIFY(!backups.make(BackupReason::daily));
            QVERIFY(healCalls());
            for (const auto& backup : got(backups.list())) QVERIFY(contentsOf(backup.file));
            for (const auto& file : filesUnder(backups.folder())) {
                QVERIFY2(file.extension() == ".book", file.c_str());
            }
        }
    }

    void sweepingLeavesWhatIsNamed() {
        PhotoRoom room;
        must(room.takePhoto(1));
        must(room.takePhoto(2));
        room.book.undo().value();  // retracted, but still named: it can be put back
        const Backups backups(room.book.path(), room.clock, Zone::utc());
        backups.make(BackupReason::asked).value();
        must(room.takePhoto(3));
        const auto orphan = room.store.keep(smallPicture(9), room.developer).value();
        std::ofstream(room.folder() / "pictures" / "x.jpg.part") << "unfinished";
        std::ofstream(room.folder() / "pictures" / "holiday.jpg") << "somebody's own";

        QCOMPARE(sweepPhotos(room.book.path()).value(), 0);  // all are too young
        QCOMPARE(sweepPhotos(room.book.path(), 0s).value(), 4);
        QVERIFY(!room.files.exists(room.store.picturePath(orphan.picture)));
        QVERIFY(!room.files.exists(room.store.originalPath(orphan.original)));
        QCOMPARE(filesUnder(room.folder()).size(), 3U * 3 + 1);
        QCOMPARE(lookOverPhotos(room.book, room.files)->whole, 2);

        // A photo that only a backup names stays as well.
        const auto kept = backups.list()->front().file;
        auto connection = storage::Connection::open(kept, storage::Access::readWrite).value();
        must(connection.execute(
            "INSERT INTO entry (id, device, seq, act, hlc, kind, thing, body, recorded_at, "
            "happened_at, day, zone) SELECT randomblob(16), device, seq + 1, seq + 1, hlc + 1, "
            "'levitated', thing, '{\"looks\":[\"" +
            Sha256::of(std::string_view("only there")).hex() +
            "\"]}', 0, 0, 0, 'UTC' FROM entry ORDER BY seq DESC LIMIT 1"));
        const auto lone = room.store.picturePath(Sha256::of(std::string_view("only there")));
        must(room.files.write(lone, bytesOf("only there")));
        QCOMPARE(sweepPhotos(room.book.path(), 0s).value(), 0);
        QVERIFY(room.files.exists(lone));
        // And nothing goes while a backup cannot be read.
        fs::remove(lone);
        std::ofstream(kept, std::ios::binary) << "spoilt";
        room.store.keep(smallPicture(10), room.developer).value();
        QCOMPARE(sweepPhotos(room.book.path(), 0s).value(), 0);
    }

    void choresAreDoneOnce() {
        PhotoRoom room;
        must(room.takePhoto(1));
        const auto first = doChores(room.book.path(), room.clock, Zone::utc()).value();
        QVERIFY(first.backup.has_value());
        const auto second = doChores(room.book.path(), room.clock, Zone::utc()).value();
        QVERIFY(!second.backup);
        QCOMPARE(second.sweptPhotos, 0);
    }

    void damagedPhotosAreFound() {
        PhotoRoom room;
        for (std::uint8_t n = 1; n <= 3; ++n) must(room.takePhoto(n));
        must(room.files.write(room.store.picturePath(room.named[0].picture), Bytes{1, 2}));
        fs::remove(room.store.picturePath(room.named[1].picture));
        const auto state = lookOverPhotos(room.book, room.files).value();
        QCOMPARE(state.whole, 1);
        QCOMPARE(state.damaged, 1);
        QCOMPARE(state.elsewhere, 1);
    }
};

QTEST_APPLESS_MAIN(TestFileFaults)
#include "tst_file_faults.moc"
