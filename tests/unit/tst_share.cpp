// Shared folders: three devices that never talk to each other end up with the same book.
#include <QtTest>

#include <fstream>

#include "exchange/bundle_reader.h"
#include "exchange/share.h"
#include "exchange/shared_files.h"
#include "support/exchange.h"

using namespace burrow;
using namespace burrow::test;
using namespace burrow::exchange;
namespace fs = std::filesystem;

namespace {

/// The first device of a book, and others that joined it.
struct Devices {
    explicit Devices(int others = 2) {
        animal = first.add("001", "Grammostola pulchra");
        ExportOptions options;
        exportBundle(first.book, first.folder.path() / "join.burrow", options).value();
        for (int i = 0; i < others; ++i) {
            more.push_back(std::make_unique<JoinedBook>(first.folder.path() / "join.burrow",
                                                        static_cast<std::uint64_t>(10 + i)));
        }
    }
    [[nodiscard]] std::vector<Book*> books() {
        std::vector<Book*> all{&first.book};
        for (auto& other : more) all.push_back(&other->book);
        return all;
    }
    TestBook first;
    std::vector<std::unique_ptr<JoinedBook>> more;
    SubjectId animal;
    ScratchFolder shared;
    DeviceFiles files;

    ShareReport visit(Book& book, ShareOptions options = {}) {
        options.grace = std::chrono::seconds(0);
        return visitSharedFolder(book, shared.path(), files, options).value();
    }
    void water(Book& book) { book.record(FactDraft{animal, FactKind::watered, {}, {}}).value(); }
    [[nodiscard]] fs::path folderOf(Book& book) { return shared.path() / book.device().text(); }
};

void copyTree(const fs::path& from, const fs::path& to) {
    fs::create_directories(to);
    fs::copy(from, to, fs::copy_options::recursive | fs::copy_options::overwrite_existing);
}

}  // namespace

class TestShare : public QObject {
    Q_OBJECT

private slots:
    void threeDevicesEndEqual() {
        Devices devices;
        const auto books = devices.books();
        for (int round = 0; round < 3; ++round) {
            for (auto* book : books) devices.water(*book);
            for (auto* book : books) devices.visit(*book);
        }
        for (auto* book : books) devices.visit(*book);
        QCOMPARE(dumpOf(*books[1]), dumpOf(*books[0]));
        QCOMPARE(dumpOf(*books[2]), dumpOf(*books[0]));
    }

    /// What came out of the folder is not written into it again.
    void nothingEchoes() {
        Devices devices;
        const auto books = devices.books();
        for (auto* book : books) devices.visit(*book);
        for (auto* book : books) devices.visit(*book);
        devices.water(*books[0]);
        QCOMPARE(devices.visit(*books[0]).entriesWritten, 1);
        const auto before = filesBelow(devices.shared.path());
        for (int i = 0; i < 3; ++i) {
            for (auto* book : books) {
                const auto report = devices.visit(*book);
                QCOMPARE(report.entriesWritten, 0);
                QVERIFY(report.waiting.empty());
            }
        }
        QCOMPARE(filesBelow(devices.shared.path()), before);
    }

    void onlyOwnFilesAreTouched() {
        Devices devices;
        const auto books = devices.books();
        devices.visit(*books[0]);
        const auto theirs = filesBelow(devices.folderOf(*books[0]));
        QCOMPARE(theirs.size(), 1U);
        const auto written = fs::last_write_time(devices.folderOf(*books[0]) / theirs[0]);
        devices.water(*books[1]);
        devices.visit(*books[1]);
        QCOMPARE(filesBelow(devices.folderOf(*books[0])), theirs);
        QCOMPARE(fs::last_write_time(devices.folderOf(*books[0]) / theirs[0]), written);
        for (const auto& entry : fs::directory_iterator(devices.shared.path())) {
            QVERIFY(Uuid::parse(entry.path().filename().string()));
        }
    }

    /// Cut at any length, a file on its way is left for later, and taken in when it is whole.
    void halfArrivedFilesWait() {
        Devices devices(1);
        const auto books = devices.books();
        devices.visit(*books[1]);
        devices.visit(*books[0]);
        devices.visit(*books[1]);
        devices.water(*books[0]);
        devices.visit(*books[0]);
        const auto folder = devices.folderOf(*books[0]);
        const auto names = filesBelow(folder);
        const auto newest = folder / names.back();
        const auto whole = devices.files.read(newest, 1 << 20).value();
        for (std::size_t size = 0; size < whole.size(); size += 97) {
            must(devices.files.write(newest, std::span(whole).first(size)));
            const auto report = devices.visit(*books[1]);
            QCOMPARE(report.waiting.size(), 1U);
            QCOMPARE(report.entriesAdded, 0);
        }
        // Some engines make room first and fill it in then.
        auto hollow = whole;
        std::fill(hollow.begin() + 100, hollow.end(), std::uint8_t{0});
        must(devices.files.write(newest, hollow));
        QCOMPARE(devices.visit(*books[1]).waiting.size(), 1U);
        must(devices.files.write(newest, whole));
        QCOMPARE(devices.visit(*books[1]).entriesAdded, 1);
        QCOMPARE(dumpOf(*books[1]), dumpOf(*books[0]));
    }

    void conflictCopiesAndOthersArePassedOver() {
        Devices devices(1);
        const auto books = devices.books();
        devices.visit(*books[0]);
        const auto folder = devices.folderOf(*books[0]);
        const auto name = filesBelow(folder).front();
        const auto bytes = devices.files.read(folder / name, 1 << 20).value();
        auto conflict = name;
        conflict.insert(conflict.size() - 7, ".sync-conflict-20260508-211400-ABCDEFG");
        must(devices.files.write(folder / conflict, bytes));
        must(devices.files.write(devices.shared.path() / "notes.txt", bytes));
        must(devices.files.write(devices.shared.path() / ".stfolder" / "marker", bytes));
        fs::create_directories(devices.shared.path() / "not-a-device");
        fs::create_symlink("/etc", devices.shared.path() / Uuid{}.text());
        fs::create_symlink("/etc/passwd", folder / "00000009-00000009-0123456789abcdef.burrow");
        const auto report = devices.visit(*books[1]);
        QCOMPARE(report.passedOver, 4);
        QVERIFY(report.waiting.empty());
        QCOMPARE(report.filesTaken, 1);
    }

    void otherBooksAreLeftAlone() {
        Devices devices(0);
        TestBook stranger(77);
        stranger.add("900", "Brachypelma hamorii");
        devices.visit(stranger.book);
        const auto before = entriesIn(devices.first.book);
        const auto report = devices.visit(devices.first.book);
        QCOMPARE(report.refused.size(), 1U);
        QCOMPARE(report.refused[0].reason.id, std::string("bundle.otherBook"));
        QCOMPARE(entriesIn(devices.first.book), before);
    }

    /// However often something is written, there are few files, and one who comes late gets all of it.
    void filesStayFew() {
        Devices devices(1);
        const auto books = devices.books();
        for (int i = 0; i < 120; ++i) {
            devices.water(*books[0]);
            devices.visit(*books[0]);
            QVERIFY(filesBelow(devices.folderOf(*books[0])).size() <= 13U);
            if (i % 50 == 7) devices.visit(*books[1]);
        }
        const auto report = devices.visit(*books[1]);
        QVERIFY(report.waiting.empty());
        devices.visit(*books[0]);
        QCOMPARE(dumpOf(*books[1]), dumpOf(*books[0]));
        const auto folder = devices.folderOf(*books[0]);
        std::int64_t entries = 0;
        std::set<Writing> writings;
        for (const auto& name : filesBelow(folder)) writings.insert(Writing::parse(name).value());
        for (const auto& writing : writings) {
            if (isCovered(writing, writings)) continue;
            entries += BundleReader::open(folder / writing.name())->manifest().totals.entries;
        }
        QCOMPARE(entries, entriesIn(*books[0]));
    }

    /// An emptied folder is filled again, with all that each device has.
    void anEmptiedFolderIsFilledAgain() {
        Devices devices(1);
        const auto books = devices.books();
        for (auto* book : books) devices.water(*book);
        for (auto* book : books) devices.visit(*book);
        for (const auto& entry : fs::directory_iterator(devices.shared.path())) {
            fs::remove_all(entry.path());
        }
        devices.visit(*books[1]);
        const auto whole = devices.folderOf(*books[1]);
        const auto name = filesBelow(whole).front();
        QCOMPARE(BundleReader::open(whole / name)->manifest().totals.entries, entriesIn(*books[1]));
    }

    /// A file of this device that was damaged since is written anew.
    void ownDamagedFilesAreWrittenAnew() {
        Devices devices(1);
        const auto books = devices.books();
        devices.visit(*books[0]);
        const auto folder = devices.folderOf(*books[0]);
        must(devices.files.write(folder / filesBelow(folder).front(), bytesOf("damaged")));
        for (int i = 0; i < 6; ++i) {
            devices.water(*books[0]);
            devices.visit(*books[0]);
        }
        for (const auto& name : filesBelow(folder)) QVERIFY(BundleReader::open(folder / name));
        devices.visit(*books[1]);
        devices.visit(*books[0]);
        QCOMPARE(dumpOf(*books[1]), dumpOf(*books[0]));
    }

    /// A device that left took its files along: the others still have what it wrote, and say so.
    void whatALostDeviceWroteIsKept() {
        Devices devices(2);
        const auto books = devices.books();
        devices.water(*books[2]);
        for (auto* book : {books[2], books[0], books[1]}) devices.visit(*book);
        const auto all = dumpOf(*books[2]);
        fs::remove_all(devices.folderOf(*books[2]));
        devices.visit(*books[0]);
        JoinedBook late(devices.first.folder.path() / "join.burrow", 99);
        devices.visit(late.book);
        QCOMPARE(dumpOf(late.book), all);
    }

    /// A phone restored from a copy finds what it wrote since, and goes on as a new device.
    void aRestoredCopyGoesOnAsANewDevice() {
        Devices devices(1);
        auto& second = *devices.more[0];
        devices.visit(devices.first.book);
        devices.visit(second.book);
        must(second.book.connection().execute("PRAGMA wal_checkpoint(TRUNCATE)"));
        const ScratchFolder saved;
        copyTree(second.folder.path(), saved.path());
        devices.water(second.book);
        devices.visit(second.book);
        const auto lost = dumpOf(second.book);
        auto restored = Book::open(saved.path() / "second.book", storage::Access::readWrite,
                                   second.surroundings())
                            .value();
        const auto before = restored.device();
        const auto report = devices.visit(restored);
        QVERIFY(report.isNewDevice);
        QVERIFY(restored.device() != before);
        QCOMPARE(report.entriesAdded, 1);
        QCOMPARE(dumpOf(restored), lost);
        devices.water(restored);
        devices.visit(restored);
        devices.visit(devices.first.book);
        QCOMPARE(dumpOf(devices.first.book), dumpOf(restored));
    }

    void photosCrossByThemselves() {
        Devices devices(1);
        const auto books = devices.books();
        const auto photo = photograph(devices.first, devices.animal, "a view");
        const auto secret = photograph(devices.first, devices.animal, "a secret view", true);
        QCOMPARE(devices.visit(*books[0]).photosWritten, 1);
        const auto path = devices.folderOf(*books[0]) / "photos" / (photo.hex() + ".jpg");
        const auto bytes = devices.files.read(path, 1 << 20).value();
        must(devices.files.write(path, std::span(bytes).first(bytes.size() / 2)));
        PlainDeveloper developer;
        ShareOptions options;
        options.developer = &developer;
        const auto half = devices.visit(*books[1], options);
        QCOMPARE(half.photosAdded, 0);
        QCOMPARE(half.waiting.size(), 1U);
        must(devices.files.write(path, bytes));
        QCOMPARE(devices.visit(*books[1], options).photosAdded, 1);
        const pictures::Store store(pictures::Store::folderFor(books[1]->path()), devices.files);
        QVERIFY(fs::exists(store.picturePath(photo)));
        QVERIFY(fs::exists(store.thumbnailPath(photo)));
        QVERIFY(!fs::exists(store.picturePath(secret)));
        QCOMPARE(devices.visit(*books[1], options).photosAdded, 0);
    }

    void reducedPhotos() {
        Devices devices(1);
        const auto books = devices.books();
        const auto photo = photograph(devices.first, devices.animal, "a view");
        PlainDeveloper developer;
        ShareOptions options;
        options.developer = &developer;
        options.photos = PhotoChoice::reduced;
        QCOMPARE(devices.visit(*books[0], options).photosWritten, 1);
        QCOMPARE(devices.visit(*books[0], options).photosWritten, 0);
        QCOMPARE(devices.visit(*books[1], options).photosAdded, 1);
        const pictures::Store store(pictures::Store::folderFor(books[1]->path()), devices.files);
        QVERIFY(fs::exists(store.reducedPath(photo)));
        QVERIFY(!fs::exists(store.picturePath(photo)));
        options.photos = PhotoChoice::full;
        QCOMPARE(devices.visit(*books[0], options).photosWritten, 1);
        QCOMPARE(devices.visit(*books[1], options).photosAdded, 1);
        QVERIFY(fs::exists(store.picturePath(photo)));
        QVERIFY(!fs::exists(store.reducedPath(photo)));
    }

    /// Asked for later, what was left out is written after all.
    void confidentialLater() {
        Devices devices(1);
        const auto books = devices.books();
        FactBody note = noteSaying("a secret place");
        note.confidential = true;
        devices.first.log(devices.animal, FactKind::note, note);
        devices.visit(*books[0]);
        devices.visit(*books[1]);
        QVERIFY(dumpOf(*books[1]) != dumpOf(*books[0]));
        ShareOptions options;
        options.withConfidential = true;
        devices.visit(*books[0], options);
        devices.visit(*books[1], options);
        QCOMPARE(dumpOf(*books[1]), dumpOf(*books[0]));
    }

    void takenBackAndWrittenOn() {
        Devices devices(1);
        const auto books = devices.books();
        for (auto* book : books) devices.visit(*book);
        devices.water(*books[0]);
        devices.visit(*books[0]);
        QCOMPARE(devices.visit(*books[1]).entriesAdded, 1);
        QVERIFY(takeBackBundle(*books[1], devices.files));
        devices.water(*books[1]);  // gets the number in the file that the other entry had
        QVERIFY(devices.visit(*books[1]).entriesWritten >= 1);
        QCOMPARE(devices.visit(*books[0]).entriesAdded, 1);
    }

    void needsTheFolder() {
        Devices devices(0);
        const auto refused = visitSharedFolder(devices.first.book, devices.shared.path() / "gone",
                                               devices.files, {});
        QCOMPARE(refused.error().message.id, std::string("share.noFolder"));
    }

    void namesOfWritings() {
        const Writing writing{1, 8, "0123456789abcdef"};
        QCOMPARE(writing.name(), std::string("00000001-00000008-0123456789abcdef.burrow"));
        QVERIFY(Writing::parse(writing.name()) == writing);
        for (const char* name : {"", "x.burrow", "00000000-00000008-0123456789abcdef.burrow",
                                 "00000009-00000008-0123456789abcdef.burrow",
                                 "00000001-00000008-0123456789ABCDEF.burrow",
                                 "0000001-00000008-0123456789abcdef.burrow",
                                 "+0000001-00000008-0123456789abcdef.burrow",
                                 "00000001-00000008-0123456789abcdef.burrow.part",
                                 "~syncthing~00000001-00000008-0123456789abcdef.burrow.tmp"}) {
            QVERIFY2(!Writing::parse(name), name);
        }
        QVERIFY(writing.covers({3, 4, "ffffffffffffffff"}));
        QVERIFY(!writing.covers({8, 9, "ffffffffffffffff"}));
        QVERIFY(!writing.covers(writing));
    }
};

QTEST_APPLESS_MAIN(TestShare)
#include "tst_share.moc"
