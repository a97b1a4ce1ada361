#include <algorithm>
#include <set>
#include <string>
#include <utility>

#include "exchange/bundle.h"
#include "exchange/bundle_reader.h"
#include "exchange/bundle_writer.h"
#include "exchange/peers.h"
#include "exchange/refuse.h"
#include "exchange/seal.h"
#include "journal/roster.h"

namespace burrow::exchange {
namespace {

namespace fs = std::filesystem;

constexpr std::int64_t entriesBetweenCalls = 2000;

/// While it lives the book is read through SQLite's small cache. A mapped file would come to lie in memory as
/// a whole, page by page, and a phone may have little.
class Unmapped {
public:
    static Result<Unmapped> begin(storage::Connection& connection) {
        BURROW_TRY(const auto before, connection.integer("PRAGMA mmap_size"));
        BURROW_DO(connection.execute("PRAGMA mmap_size = 0"));
        return Unmapped(connection, before);
    }
    Unmapped(Unmapped&& other) noexcept
        : connection_(std::exchange(other.connection_, nullptr)), before_(other.before_) {}
    Unmapped& operator=(Unmapped&&) = delete;
    Unmapped(const Unmapped&) = delete;
    Unmapped& operator=(const Unmapped&) = delete;
    ~Unmapped() {
        // Where it stays unmapped, reading is a little slower, and nothing else.
        if (connection_ == nullptr) return;
        static_cast<void>(
            connection_->execute("PRAGMA mmap_size = " + std::to_string(before_)).has_value());
    }

private:
    Unmapped(storage::Connection& connection, std::int64_t before)
        : connection_(&connection), before_(before) {}

    storage::Connection* connection_;
    std::int64_t before_;
};

/// One run of exportBundle().
class Exporting {
public:
    Exporting(Book& book, const ExportOptions& options)
        : book_(book), options_(options), store_(pictures::Store::folderFor(book.path()), files_) {}

    Result<Manifest> run(const fs::path& path) {
        if (options_.photos == PhotoChoice::reduced && options_.developer == nullptr) {
            return refuse({"bundle.noReducer"});
        }
        std::error_code ignored;
        if (fs::equivalent(path, book_.path(), ignored)) return refuse({"bundle.ontoBook"});
        if (path.has_parent_path()) sweepUnfinished(path.parent_path(), ".burrow");
        BURROW_TRY(auto writer,
                   BundleWriter::create(path, options_.passphrase, book_.surroundings().random));
        BURROW_TRY(auto manifest, write(writer));
        BURROW_TRY(manifest, writer.close(std::move(manifest)));
        BURROW_DO(readBack(writer, manifest));
        BURROW_DO(writer.publish());
        return manifest;
    }

private:
    Result<Manifest> write(BundleWriter& writer) {
        BURROW_TRY(const auto unmapped, Unmapped::begin(book_.connection()));
        // One snapshot for all of it: another program may be writing meanwhile.
        BURROW_TRY(const auto snapshot, storage::Snapshot::take(book_.connection()));
        BURROW_TRY(auto manifest, head());
        BURROW_DO(writeEntries(writer));
        if (options_.photos != PhotoChoice::none) BURROW_DO(writePhotos(writer));
        manifest.missingPhotos = missing_;
        return manifest;
    }

    Result<Manifest> head() {
        Manifest manifest;
        manifest.program = options_.program;
        manifest.book = book_.id();
        BURROW_TRY(const auto room, roomInfo(book_));
        manifest.room = room.name;
        manifest.roomCode = room.code;
        manifest.device = book_.device();
        manifest.writtenAt = book_.surroundings().clock.now();
        manifest.madeFor = options_.madeFor;
        manifest.extent = options_.selection.subjects ? Extent::chosen
                          : options_.madeFor          ? Extent::lacking
                                                      : Extent::everything;
        manifest.photoChoice = options_.photos;
        manifest.withConfidential = options_.selection.withConfidential;
        BURROW_TRY(manifest.vector, versionVector(book_.connection()));
        return manifest;
    }

    Done writeEntries(BundleWriter& writer) {
        VersionVector theirs;
        if (options_.madeFor) {
            BURROW_TRY(theirs, peerVector(book_.connection(), *options_.madeFor));
        }
        const bool isAll = !options_.madeFor && !options_.selection.subjects;
        std::uint64_t total = 0;
        if (isAll) {
            BURROW_TRY(const auto count, book_.connection().integer("SELECT count(*) FROM entry"));
            total = static_cast<std::uint64_t>(count);
        }
        std::uint64_t done = 0;
        return forEachEntryLacking(book_.connection(), theirs, options_.selection,
                                   [&](const StoredEntry& entry) -> Done {
                                       if (done++ % entriesBetweenCalls == 0)
                                           BURROW_DO(report(Step::entries, done, total));
                                       return writer.add(entry);
                                   });
    }

    /// The pictures to send, in the order of their hashes: those of photos that still count.
    Result<std::set<Sha256>> pictures(const BundleWriter& writer) {
        std::set<Sha256> pictures;
        for (const auto& photo : writer.photos()) {
            BURROW_TRY(auto row, book_.connection().query("SELECT 1 FROM correction WHERE target = "
                                                          "? AND kind = 'retract'"));
            row.bind(photo.fact.uuid.bytes);
            BURROW_TRY(const bool isRetracted, row.next());
            if (!isRetracted) pictures.insert(photo.picture);
        }
        return pictures;
    }

    Done writePhotos(BundleWriter& writer) {
        BURROW_TRY(const auto wanted, pictures(writer));
        std::uint64_t done = 0;
        for (const auto& picture : wanted) {
            if (done >= limit::photos) return refuse({"bundle.tooManyPhotos"});
            BURROW_DO(report(Step::photos, done++, wanted.size()));
            BURROW_DO(writePhoto(writer, picture));
        }
        return {};
    }

    Done writePhoto(BundleWriter& writer, const Sha256& picture) {
        const auto full = files_.read(store_.picturePath(picture), pictures::Limits().bytes);
        if (full && Sha256::of(*full) == picture) {
            if (options_.photos == PhotoChoice::full) return writer.addPhoto(picture, *full);
            const auto info = pictures::inspect(*full);
            if (info) {
                const auto copy = options_.developer->reduce(*full, *info, pictures::reducedSide);
                if (copy) return writer.addReduced(picture, *copy);
            }
        }
        // Perhaps this device only ever got the smaller copy itself.
        const auto copy = files_.read(store_.reducedPath(picture), pictures::Limits().bytes);
        if (copy && pictures::inspect(*copy)) return writer.addReduced(picture, *copy);
        ++missing_;
        return {};
    }

    /// What cannot be read by others must not be offered.
    Done readBack(const BundleWriter& writer, const Manifest& manifest) {
        if (!options_.passphrase.empty()) return readBackSealed(writer);
        BURROW_TRY(const auto reader, BundleReader::open(writer.temporary()));
        if (reader.manifest() != manifest)
            return fail(Trouble::inputOutput, {"bundle.notReadBack"});
        BURROW_DO(reader.checkEntries([&](std::uint64_t bytes) {
            return report(Step::checking, bytes, manifest.totals.bytes);
        }));
        std::uint64_t done = 0;
        const auto total = manifest.photos.size() + manifest.reduced.size();
        return reader.readPhotos(
            [](const Sha256&, bool) { return true; },
            [&](const BundleReader::Photo&) { return report(Step::checking, ++done, total); });
    }

    /// A sealed file has to give back, byte for byte, the zip that went into it.
    Done readBackSealed(const BundleWriter& writer) {
        class Hashing final : public ByteSink {
        public:
            Done write(std::span<const std::uint8_t> bytes) override {
                hash.add(bytes);
                return {};
            }
            Sha256Stream hash;
        };
        Hashing back;
        BURROW_DO(unseal(writer.temporary(), options_.passphrase, back, [&](double part) {
            constexpr std::uint64_t parts = 1000;
            const auto done = static_cast<std::uint64_t>(part * static_cast<double>(parts));
            return report(Step::checking, done, parts).has_value();
        }));
        if (back.hash.finish() != writer.zipHash()) {
            return fail(Trouble::inputOutput, {"bundle.notReadBack"});
        }
        return {};
    }

    Done report(Step step, std::uint64_t done, std::uint64_t total) {
        if (!options_.onProgress || options_.onProgress({step, done, total})) return {};
        return refuse({"bundle.stopped"});
    }

    Book& book_;
    const ExportOptions& options_;
    DeviceFiles files_;
    pictures::Store store_;
    std::int64_t missing_ = 0;
};

}  // namespace

Result<Manifest> exportBundle(Book& book, const fs::path& path, const ExportOptions& options) {
    return Exporting(book, options).run(path);
}

}  // namespace burrow::exchange
