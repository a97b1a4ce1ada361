// Bundles out and in: what one book writes, another one takes in whole.
#include <QtTest>

#include <sys/wait.h>
#include <unistd.h>

#include "exchange/zip_reader.h"
#include "support/exchange.h"

using namespace burrow;
using namespace burrow::test;
using namespace burrow::exchange;
namespace fs = std::filesystem;

namespace {

/// A room with two animals, some history and a photo of each.
struct Room : TestBook {
    Room() {
        first = add("001", "Grammostola pulchra");
        second = add("002", "Neoholothele incei", Form::group, 9);
        log(first, FactKind::watered, {}, Instant{fridayEvening.ms - 30 * msPerDay});
        log(second, FactKind::note, noteSaying("webbed over the dish"));
        firstPhoto = photograph(*this, first, "the first");
        secondPhoto = photograph(*this, second, "the second");
    }
    fs::path file(const char* name = "out.burrow") const { return folder.path() / name; }
    Manifest write(ExportOptions options = {}, const char* name = "out.burrow") {
        options.program = "Burrowbook test";
        return exportBundle(book, file(name), options).value();
    }
    SubjectId first;
    SubjectId second;
    Sha256 firstPhoto;
    Sha256 secondPhoto;
};

ExportOptions withPhotos(PhotoChoice choice, pictures::Developer* developer = nullptr) {
    ExportOptions options;
    options.photos = choice;
    options.developer = developer;
    return options;
}

/// The entries of a bundle as text.
std::string entriesOf(const fs::path& file) {
    auto zip = ZipReader::open(file).value();
    while (const auto item = zip.next().value()) {
        if (item->name == filename::entries) {
            return std::string(textOf(zip.readAll(1U << 24U).value()));
        }
    }
    return {};
}

}  // namespace

class TestBundle : public QObject {
    Q_OBJECT

private slots:
    void aSecondDeviceHoldsTheSame() {
        Room room;
        const auto manifest = room.write(withPhotos(PhotoChoice::full));
        QCOMPARE(manifest.totals.entries, entriesIn(room.book));
        QCOMPARE(manifest.totals.animals, 2);
        QCOMPARE(manifest.photos.size(), 2U);
        QCOMPARE(isoDate(*manifest.totals.firstDay), std::string("2026-04-08"));
        QCOMPARE(isoDate(*manifest.totals.lastDay), std::string("2026-05-08"));

        PlainDeveloper developer;
        TakeInOptions options;
        options.developer = &developer;
        JoinedBook other(room.file(), 2, options);
        QCOMPARE(dumpOf(other.book), dumpOf(room.book));
        QCOMPARE(other.book.id(), room.book.id());
        QVERIFY(other.book.device() != room.book.device());
        QCOMPARE(other.taken.merge.added, entriesIn(room.book));
        QCOMPARE(other.taken.photosAdded, 2);
        QCOMPARE(other.taken.differences, 0);
        pictures::Store store(pictures::Store::folderFor(other.book.path()), other.files);
        for (const auto& photo : {room.firstPhoto, room.secondPhoto}) {
            QVERIFY(store.isIntact(photo));
            QVERIFY(fs::exists(store.thumbnailPath(photo)));
        }
        // The originals never leave the device.
        QCOMPARE(filesBelow(pictures::Store::folderFor(other.book.path())).size(), 4U);
        QVERIFY(!fs::exists(stagingFolderFor(other.book.path())));
        QCOMPARE(filesBelow(other.folder.path() / "second.book.joining-photos").size(), 0U);
    }

    void peekSaysWhatIsInIt() {
        Room room;
        const auto written = room.write(withPhotos(PhotoChoice::full));
        const auto contents = peek(room.file()).value();
        QVERIFY(contents.manifest == written);
        QVERIFY(!contents.isSealed);
        QCOMPARE(contents.fileBytes, fs::file_size(room.file()));
        QCOMPARE(contents.manifest.room, std::string("Kiln Row"));
        QCOMPARE(contents.manifest.device, room.book.device());
        QCOMPARE(contents.manifest.writtenAt.ms, fridayEvening.ms);
        QVERIFY(!contents.manifest.withConfidential);
    }

    void takingInTwiceChangesNothing() {
        Room room;
        room.write(withPhotos(PhotoChoice::full));
        JoinedBook other(room.file(), 2);
        const auto before = dumpOf(other.book);
        const auto again = mergeBundle(other.book, room.file(), other.files).value();
        QCOMPARE(again.merge.added, 0);
        QCOMPARE(again.merge.known, entriesIn(room.book));
        QCOMPARE(again.photosKnown, 2);
        QCOMPARE(again.photosAdded, 0);
        QVERIFY(!again.merge.arrival);
        QCOMPARE(dumpOf(other.book), before);
    }

    /// The last file from a device says what it has, so the next one for it holds the rest.
    void onlyWhatTheOtherLacks() {
        Room room;
        room.write();
        JoinedBook other(room.file(), 2);
        other.book.record(FactDraft{room.first, FactKind::fangsBlack, {}, {}}).value();
        ExportOptions toFirst;
        toFirst.madeFor = room.book.device();
        const auto back = exportBundle(other.book, other.folder.path() / "back.burrow", toFirst);
        QCOMPARE(back->totals.entries, 1);
        QCOMPARE(back->extent, Extent::lacking);
        mergeBundle(room.book, other.folder.path() / "back.burrow", other.files).value();
        QCOMPARE(dumpOf(room.book), dumpOf(other.book));

        room.log(room.second, FactKind::watered);
        ExportOptions toOther;
        toOther.madeFor = other.book.device();
        QCOMPARE(room.write(toOther, "next.burrow").totals.entries, 1);
        mergeBundle(other.book, room.file("next.burrow"), other.files).value();
        QCOMPARE(dumpOf(room.book), dumpOf(other.book));
        QCOMPARE(peers(other.book)->size(), 1U);
        QCOMPARE(peers(other.book)->front().device, room.book.device());

        // One who never wrote gets everything.
        ExportOptions toStranger;
        toStranger.madeFor = DeviceId{room.book.newId()};
        QCOMPARE(room.write(toStranger, "all.burrow").totals.entries, entriesIn(room.book));
    }

    void chosenAnimals() {
        Room room;
        auto options = withPhotos(PhotoChoice::full);
        options.selection.subjects = {room.second};
        const auto manifest = room.write(options);
        QCOMPARE(manifest.extent, Extent::chosen);
        QCOMPARE(manifest.totals.animals, 1);
        QCOMPARE(manifest.photos.size(), 1U);
        QVERIFY(manifest.photos.contains(room.secondPhoto));
    }

    void confidentialOnlyWhenAsked() {
        Room room;
        FactBody sale;
        sale.party = "Imaginary Buyer";
        sale.price = "40 EUR";
        room.log(room.second, FactKind::sold, sale);
        auto secret = noteSaying("a secret place");
        secret.confidential = true;
        room.log(room.first, FactKind::note, secret);
        const auto photo = photograph(room, room.first, "a secret view", true);

        auto options = withPhotos(PhotoChoice::full);
        QVERIFY(!room.write(options).photos.contains(photo));
        const JoinedBook without(room.file(), 2);
        options.selection.withConfidential = true;
        QVERIFY(room.write(options, "with.burrow").photos.contains(photo));
        JoinedBook with(room.file("with.burrow"), 3);
        QCOMPARE(dumpOf(with.book), dumpOf(room.book));

        for (const char* word : {"Imaginary Buyer", "40 EUR", "a secret place"}) {
            QVERIFY2(entriesOf(room.file()).find(word) == std::string::npos, word);
            QVERIFY2(entriesOf(room.file("with.burrow")).find(word) != std::string::npos, word);
        }
    }

    void reducedPhotosStandInUntilTheFullOnesCome() {
        Room room;
        PlainDeveloper developer;
        const auto manifest = room.write(withPhotos(PhotoChoice::reduced, &developer));
        QCOMPARE(manifest.photos.size(), 0U);
        QCOMPARE(manifest.reduced.size(), 2U);
        JoinedBook other(room.file(), 2);
        const pictures::Store store(pictures::Store::folderFor(other.book.path()), other.files);
        QVERIFY(fs::exists(store.reducedPath(room.firstPhoto)));
        QVERIFY(!fs::exists(store.picturePath(room.firstPhoto)));
        // Whoever has only the smaller copy passes on that.
        const auto onward =
            exportBundle(other.book, room.file("onward.burrow"), withPhotos(PhotoChoice::full));
        QCOMPARE(onward->reduced.size(), 2U);

        room.write(withPhotos(PhotoChoice::full), "full.burrow");
        const auto full = mergeBundle(other.book, room.file("full.burrow"), other.files).value();
        QCOMPARE(full.photosAdded, 2);
        QVERIFY(fs::exists(store.picturePath(room.firstPhoto)));
        QVERIFY(!fs::exists(store.reducedPath(room.firstPhoto)));
    }

    /// What is not there, or is not what it was, is not offered; the rest is.
    void missingAndDamagedPhotosAreCounted() {
        Room room;
        DeviceFiles files;
        const pictures::Store store(pictures::Store::folderFor(room.book.path()), files);
        must(files.remove(store.picturePath(room.firstPhoto)));
        must(files.write(store.picturePath(room.secondPhoto), jpegSaying("another")));
        const auto manifest = room.write(withPhotos(PhotoChoice::full));
        QCOMPARE(manifest.photos.size(), 0U);
        QCOMPARE(manifest.missingPhotos, 2);
    }

    void retractedPhotosStay() {
        Room room;
        QVERIFY(room.book.undo());  // the second photo
        const auto manifest = room.write(withPhotos(PhotoChoice::full));
        QCOMPARE(manifest.photos.size(), 1U);
        QVERIFY(manifest.photos.contains(room.firstPhoto));
    }

    void takingBackRemovesWhatCame() {
        Room room;
        room.write();
        JoinedBook other(room.file(), 2);
        const auto before = dumpOf(other.book);
        const auto photo = photograph(room, room.first, "a third");
        room.write(withPhotos(PhotoChoice::full), "more.burrow");
        const auto taken = mergeBundle(other.book, room.file("more.burrow"), other.files).value();
        QCOMPARE(taken.merge.added, 1);
        QCOMPARE(taken.photosAdded, 3);
        QCOMPARE(takeBackBundle(other.book, other.files)->arrival.entries, 1);
        QCOMPARE(dumpOf(other.book), before);
        const pictures::Store store(pictures::Store::folderFor(other.book.path()), other.files);
        QVERIFY(!fs::exists(store.picturePath(photo)));
        QVERIFY(fs::exists(store.picturePath(room.firstPhoto)));  // still named by an entry
    }

    void otherBooksOnlyWhenAsked() {
        Room room;
        room.write();
        TestBook stranger(7);
        const auto before = dumpOf(stranger.book);
        DeviceFiles files;
        const auto refused = mergeBundle(stranger.book, room.file(), files);
        QCOMPARE(refused.error().message.id, std::string("bundle.otherBook"));
        QCOMPARE(dumpOf(stranger.book), before);
        TakeInOptions options;
        options.fromOtherBook = true;
        QVERIFY(mergeBundle(stranger.book, room.file(), files, options));
        QCOMPARE(stranger.kept(room.first).subject.number, std::string("001"));
        QCOMPARE(roomInfo(stranger.book)->name, std::string("Kiln Row"));
    }

    void joiningRefusesWhatIsThere() {
        Room room;
        room.write();
        DeviceFiles files;
        const auto refused =
            joinFromBundle(room.book.path(), room.file(), files, room.surroundings());
        QCOMPARE(refused.error().message.id, std::string("book.exists"));
        const auto none = joinFromBundle(room.folder.path() / "new.book", room.book.path(), files,
                                         room.surroundings());
        QVERIFY(!none);
        for (const auto& name : filesBelow(room.folder.path())) {
            QVERIFY2(!QString::fromStdString(name).startsWith("new.book"), name.c_str());
        }
    }

    void neverOntoTheBook() {
        Room room;
        const auto before = dumpOf(room.book);
        const auto refused = exportBundle(room.book, room.book.path(), {});
        QCOMPARE(refused.error().message.id, std::string("bundle.ontoBook"));
        QCOMPARE(dumpOf(room.book), before);
    }

    void sealedFilesNeedTheirPassphrase() {
        Room room;
        auto options = withPhotos(PhotoChoice::full);
        options.passphrase = "eight legs, two palps";
        const auto written = room.write(options);
        QCOMPARE(peek(room.file()).error().message.id, std::string("seal.needed"));
        PeekOptions wrong;
        wrong.scratch = room.folder.path();
        wrong.passphrase = "six legs";
        QCOMPARE(peek(room.file(), wrong).error().message.id, std::string("seal.wrong"));
        PeekOptions right = wrong;
        right.passphrase = options.passphrase;
        const auto contents = peek(room.file(), right).value();
        QVERIFY(contents.isSealed);
        QVERIFY(contents.manifest == written);
        TakeInOptions takeIn;
        takeIn.passphrase = options.passphrase;
        JoinedBook other(room.file(), 2, takeIn);
        QCOMPARE(dumpOf(other.book), dumpOf(room.book));
        // Nothing of what was opened stays behind.
        for (const auto& name : filesBelow(room.folder.path())) {
            QVERIFY2(name.find("unsealed") == std::string::npos, name.c_str());
        }
    }

    /// Stopped at any call of its progress, neither an export nor a merge leaves anything.
    void stoppingLeavesNothing() {
        Room room;
        PlainDeveloper developer;
        auto options = withPhotos(PhotoChoice::full);
        options.passphrase = "pass";
        room.write(options);
        options.passphrase.clear();
        const auto files = filesBelow(room.folder.path());
        for (int calls = 0;; ++calls) {
            int left = calls;
            options.onProgress = [&](const Progress&) { return left-- > 0; };
            const auto done = exportBundle(room.book, room.file("stopped.burrow"), options);
            if (done) break;
            QCOMPARE(done.error().message.id, std::string("bundle.stopped"));
            QCOMPARE(filesBelow(room.folder.path()), files);
            QVERIFY(calls < 1000);
        }
        TestBook target(9);
        DeviceFiles deviceFiles;
        const auto before = dumpOf(target.book);
        const auto beside = filesBelow(target.folder.path());
        TakeInOptions takeIn;
        takeIn.fromOtherBook = true;
        takeIn.passphrase = "pass";
        takeIn.developer = &developer;
        for (int calls = 0;; ++calls) {
            int left = calls;
            takeIn.onProgress = [&](const Progress&) { return left-- > 0; };
            const auto done = mergeBundle(target.book, room.file(), deviceFiles, takeIn);
            if (done) break;
            QCOMPARE(done.error().message.id, std::string("bundle.stopped"));
            QCOMPARE(dumpOf(target.book), before);
            QCOMPARE(filesBelow(target.folder.path()), beside);
            QVERIFY(calls < 1000);
        }
        QVERIFY(dumpOf(target.book) != before);
    }

    /// Killed at any call of its progress, the next start clears up.
    void dyingLeavesNothing() {
        Room room;
        auto options = withPhotos(PhotoChoice::full);
        options.passphrase = "pass";
        room.write(options);
        TestBook target(9);
        const auto before = dumpOf(target.book);
        const auto beside = filesBelow(target.folder.path());
        const auto path = target.book.path();
        for (int calls = 0; calls < 200; ++calls) {
            const auto child = fork();
            if (child == 0) {
                DeviceFiles files;
                auto book = Book::open(path, storage::Access::readWrite, target.surroundings());
                TakeInOptions takeIn;
                takeIn.fromOtherBook = true;
                takeIn.passphrase = "pass";
                int left = calls;
                takeIn.onProgress = [&](const Progress&) {
                    if (left-- == 0) _exit(1);
                    return true;
                };
                const auto done = mergeBundle(*book, room.file(), files, takeIn);
                _exit(done ? 0 : 2);
            }
            int status = 0;
            waitpid(child, &status, 0);
            if (status == 0) return;
            QCOMPARE(WEXITSTATUS(status), 1);
            DeviceFiles files;
            auto book = Book::open(path, storage::Access::readWrite, target.surroundings()).value();
            must(sweepStaging(book, files));
            QCOMPARE(dumpOf(book), before);
            for (const auto& name : filesBelow(target.folder.path())) {
                const bool isSqlite = name.ends_with("-wal") || name.ends_with("-shm");
                const bool wasThere = std::find(beside.begin(), beside.end(), name) != beside.end();
                QVERIFY2(isSqlite || wasThere, name.c_str());
            }
        }
        QFAIL("never came to its end");
    }

    /// Photos that were placed for entries which never got committed go at the next start; those whose
    /// entries did stay.
    void photosOfADeadRunAreLookedAt() {
        Room room;
        DeviceFiles files;
        const auto stray = jpegSaying("of nobody");
        const auto hash = Sha256::of(stray);
        const pictures::Store store(pictures::Store::folderFor(room.book.path()), files);
        must(files.write(store.picturePath(hash), stray));
        must(files.write(store.thumbnailPath(hash), stray));
        const auto list = "full " + hash.hex() + "\nfull " + room.firstPhoto.hex() + "\n";
        must(files.write(stagingFolderFor(room.book.path()) / "placing", bytesOf(list)));
        must(sweepStaging(room.book, files));
        QVERIFY(!fs::exists(store.picturePath(hash)));
        QVERIFY(!fs::exists(store.thumbnailPath(hash)));
        QVERIFY(fs::exists(store.picturePath(room.firstPhoto)));
        QVERIFY(fs::exists(store.thumbnailPath(room.firstPhoto)));
        QVERIFY(!fs::exists(stagingFolderFor(room.book.path())));
    }

    void oneAtATime() {
        Room room;
        room.write();
        DeviceFiles files;
        const auto held = Staging::open(room.book, files).value();
        const auto refused = mergeBundle(room.book, room.file(), files);
        QCOMPARE(refused.error().message.id, std::string("bundle.busy"));
        QCOMPARE(refused.error().trouble, Trouble::locked);
    }

    /// An entry of a kind from the future travels on unchanged.
    void unknownKindsTravelOn() {
        Room room;
        Entry entry;
        entry.id = EntryId{room.book.newId()};
        entry.device = DeviceId{room.book.newId()};
        entry.seq = entry.act = 1;
        entry.hlc = fridayEvening.ms << 16;
        entry.kind = "weighed_in_the_dark";
        entry.thing = room.first.uuid;
        entry.body = {{"lux", 0.25}, {"nested", {{"list", {1, 2, 3}}}}};
        entry.recordedAt = entry.happenedAt = fridayEvening;
        entry.day = CivilDay{20'581};
        entry.zone = "UTC";
        auto merge = Merge::begin(room.book, {"test", {}}).value();
        must(merge.add(entry));
        QVERIFY(merge.commit());
        room.write();
        JoinedBook other(room.file(), 2);
        QCOMPARE(other.taken.merge.unknown, 1);
        QCOMPARE(dumpOf(other.book), dumpOf(room.book));
    }
};

QTEST_APPLESS_MAIN(TestBundle)
#include "tst_bundle.moc"
