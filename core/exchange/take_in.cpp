#include <algorithm>
#include <set>

#include "exchange/bundle.h"
#include "exchange/bundle_reader.h"
#include "exchange/peers.h"
#include "exchange/refuse.h"
#include "exchange/seal.h"
#include "exchange/staging.h"
#include "journal/differences.h"

namespace burrow::exchange {
namespace {

namespace fs = std::filesystem;

constexpr std::int64_t entriesBetweenCalls = 2000;
constexpr const char* unsealedEnding = ".unsealed";

Done report(const OnProgress& onProgress, Step step, std::uint64_t done, std::uint64_t total) {
    if (!onProgress || onProgress({step, done, total})) return {};
    return refuse({"bundle.stopped"});
}

/// The plain zip of a bundle: the file itself, or a copy that was opened and goes with this.
class PlainBundle {
public:
    static Result<PlainBundle> open(const fs::path& path, const std::string& passphrase,
                                    const fs::path& unsealed, const OnProgress& onProgress) {
        BURROW_TRY(const bool sealed, isSealed(path));
        if (!sealed) return PlainBundle(path);
        if (passphrase.empty()) return refuse({"seal.needed"});
        // It is never finished: its owner removes it, and only its owner can read it.
        BURROW_TRY(auto copy, FileWriter::create(unsealed, true));
        constexpr std::uint64_t parts = 1000;
        bool wasStopped = false;
        BURROW_DO(unseal(path, passphrase, copy, [&](double part) {
            const auto done = static_cast<std::uint64_t>(part * static_cast<double>(parts));
            wasStopped = !report(onProgress, Step::opening, done, parts);
            return !wasStopped;
        }));
        BURROW_DO(copy.flush());
        return PlainBundle(std::move(copy));
    }

    [[nodiscard]] fs::path path() const { return copy_ ? copy_->temporary() : path_; }
    [[nodiscard]] bool isSealed() const { return copy_.has_value(); }

private:
    static Result<bool> isSealed(const fs::path& path) { return exchange::isSealed(path); }
    explicit PlainBundle(fs::path path) : path_(std::move(path)) {}
    explicit PlainBundle(FileWriter copy) : copy_(std::move(copy)) {}
    fs::path path_;
    std::optional<FileWriter> copy_;
};

/// One run of mergeBundle().
class TakingIn {
public:
    TakingIn(Book& book, Files& files, const TakeInOptions& options)
        : book_(book), files_(files), options_(options) {}

    Result<TakenIn> run(const fs::path& path) {
        BURROW_TRY(auto staging, Staging::open(book_, files_));
        BURROW_TRY(const auto plain,
                   PlainBundle::open(path, options_.passphrase, staging.path(unsealedEnding),
                                     options_.onProgress));
        BURROW_TRY(const auto reader, BundleReader::open(plain.path()));
        taken_.manifest = reader.manifest();
        if (taken_.manifest.book != book_.id() && !options_.fromOtherBook) {
            return refuse({"bundle.otherBook", {{"room", taken_.manifest.room}}});
        }
        BURROW_DO(stagePhotos(reader, staging));
        BURROW_DO(uniteEntries(reader, staging, path));
        staging.keep();
        BURROW_TRY(const auto open, differences(book_));
        taken_.differences = static_cast<std::int64_t>(open.size());
        return std::move(taken_);
    }

private:
    /// Before the book is locked, since it may take long: every photo that is not here yet is read, checked
    /// and put aside.
    Done stagePhotos(const BundleReader& reader, Staging& staging) {
        const auto total = taken_.manifest.photos.size() + taken_.manifest.reduced.size();
        std::uint64_t done = 0;
        const auto isWanted = [&](const Sha256& picture, bool isReduced) {
            const bool isHere = staging.isHere({picture, isReduced});
            if (isHere) ++taken_.photosKnown;
            return !isHere;
        };
        return reader.readPhotos(isWanted, [&](const BundleReader::Photo& photo) -> Done {
            BURROW_DO(report(options_.onProgress, Step::photos, done++, total));
            const auto info = pictures::inspect(photo.bytes);
            if (!info || info->format != pictures::Format::jpeg) {
                return refuse({"bundle.noPicture"});
            }
            Bytes thumbnail;
            if (options_.developer != nullptr) {
                auto made = options_.developer->reduce(photo.bytes, *info, pictures::thumbnailSide);
                // A picture that is whole and yet can't be decoded here is kept without one.
                if (made) thumbnail = *std::move(made);
            }
            const Staged staged{photo.picture, photo.isReduced};
            BURROW_DO(staging.stage(staged, photo.bytes, thumbnail));
            staged_.push_back(staged);
            return {};
        });
    }

    Done uniteEntries(const BundleReader& reader, Staging& staging, const fs::path& path) {
        const auto& manifest = taken_.manifest;
        BURROW_TRY(auto merge, Merge::begin(book_, {path.filename().string(), manifest.device}));
        BURROW_TRY(const bool hasAllEntries, hasAll(book_.connection(), manifest.totals));
        std::vector<Staged> named;
        if (!hasAllEntries) {
            BURROW_TRY(const auto photos, readInto(merge, reader));
            std::set<Sha256> pictures;
            for (const auto& photo : photos) pictures.insert(photo.picture);
            named = stagedOf(pictures);
        } else if (!staged_.empty()) {
            BURROW_TRY(const auto pictures, namedPictures(book_.connection(), staged_));
            named = stagedOf(pictures);
        }
        taken_.photosUnnamed = static_cast<std::int64_t>(staged_.size() - named.size());
        BURROW_DO(rememberPeer(book_.connection(), manifest));
        BURROW_DO(report(options_.onProgress, Step::placing, 0, named.size()));
        BURROW_DO(staging.place(named));
        taken_.photosAdded = static_cast<std::int64_t>(named.size());
        if (merge.added() > 0) BURROW_DO(noteArrived(named));
        BURROW_TRY(taken_.merge, merge.commit());
        if (hasAllEntries) taken_.merge.known = manifest.totals.entries;
        return {};
    }

    /// So that they go when the arrival is taken back. It gets its number as it is committed: the next.
    Done noteArrived(const std::vector<Staged>& photos) {
        for (const auto& photo : photos) {
            BURROW_TRY(auto insert, book_.connection().query(
                                        "INSERT OR IGNORE INTO arrived_photo (arrival, picture, "
                                        "reduced) SELECT coalesce(max(number), 0) + 1, ?, ? FROM "
                                        "arrival"));
            BURROW_DO(insert.bind(photo.picture.bytes, photo.isReduced ? 1 : 0).run());
        }
        return {};
    }

    Result<std::vector<NamedPhoto>> readInto(Merge& merge, const BundleReader& reader) {
        std::int64_t count = 0;
        return reader.readEntries([&](const Entry& entry, std::uint64_t bytes) -> Done {
            if (count++ % entriesBetweenCalls == 0) {
                BURROW_DO(report(options_.onProgress, Step::entries, bytes,
                                 taken_.manifest.totals.bytes));
            }
            return merge.add(entry);
        });
    }

    [[nodiscard]] std::vector<Staged> stagedOf(const std::set<Sha256>& pictures) const {
        std::vector<Staged> found;
        for (const auto& photo : staged_) {
            if (pictures.contains(photo.picture)) found.push_back(photo);
        }
        return found;
    }

    Book& book_;
    Files& files_;
    const TakeInOptions& options_;
    TakenIn taken_;
    std::vector<Staged> staged_;
};

Result<std::vector<Staged>> photosOfArrival(storage::Connection& connection, std::int64_t number) {
    std::vector<Staged> photos;
    BURROW_TRY(auto rows, connection.query("SELECT picture, reduced FROM arrived_photo WHERE "
                                           "arrival = ?"));
    rows.bind(number);
    while (true) {
        BURROW_TRY(const bool more, rows.next());
        if (!more) return photos;
        Sha256 picture;
        const auto bytes = rows.blob(0);
        std::copy_n(bytes.begin(), std::min(bytes.size(), picture.bytes.size()),
                    picture.bytes.begin());
        photos.push_back({picture, rows.integer(1) != 0});
    }
}

/// Removes a book that was not to be, with all that belongs to it.
void removeBook(const fs::path& path) {
    std::error_code ignored;
    for (const char* ending : {"", "-wal", "-shm", "-journal", "-photos", "-staging"}) {
        fs::remove_all(path.string() + ending, ignored);
    }
}

Done renameTo(const fs::path& from, const fs::path& to) {
    std::error_code error;
    fs::rename(from, to, error);
    if (error) return failFromErrno(error.value(), to);
    return {};
}

}  // namespace

Result<Contents> peek(const fs::path& path, const PeekOptions& options) {
    sweepUnfinished(options.scratch, unsealedEnding);
    const auto unsealed = options.scratch / (path.filename().string() + unsealedEnding);
    BURROW_TRY(const auto plain,
               PlainBundle::open(path, options.passphrase, unsealed, options.onProgress));
    BURROW_TRY(const auto reader, BundleReader::open(plain.path()));
    std::error_code error;
    const auto bytes = fs::file_size(path, error);
    return Contents{reader.manifest(), plain.isSealed(), error ? 0 : bytes};
}

Result<TakenIn> mergeBundle(Book& book, const fs::path& path, Files& files,
                            const TakeInOptions& options) {
    return TakingIn(book, files, options).run(path);
}

Result<TakenBack> takeBackBundle(Book& book, Files& files) {
    BURROW_TRY(auto staging, Staging::open(book, files));
    BURROW_TRY(const auto newest,
               book.connection().integer("SELECT coalesce(max(number), 0) FROM arrival"));
    BURROW_TRY(const auto photos, photosOfArrival(book.connection(), newest));
    BURROW_DO(staging.doubt(photos));
    BURROW_TRY(auto taken, takeBackArrival(book));
    BURROW_DO(removeUnnamed(book, files, photos));
    return taken;
}

Result<TakenIn> joinFromBundle(const fs::path& path, const fs::path& bundle, Files& files,
                               const Surroundings& surroundings, const TakeInOptions& options) {
    if (files.exists(path)) {
        return refuse({"book.exists", {{"file", path.filename().string()}}});
    }
    BURROW_TRY(const auto contents,
               peek(bundle, {.passphrase = options.passphrase,
                             .scratch = path.has_parent_path() ? path.parent_path() : fs::path("."),
                             .onProgress = options.onProgress}));
    // Under another name until all of it is there; what a run that died left under it goes.
    auto unfinished = path;
    unfinished += ".joining";
    removeBook(unfinished);
    auto taken = [&]() -> Result<TakenIn> {
        BURROW_TRY(auto book, Book::join(unfinished, contents.manifest.book, surroundings));
        return mergeBundle(book, bundle, files, options);
    }();
    if (taken) {
        const auto photos = pictures::Store::folderFor(unfinished);
        const auto move = [&]() -> Done {
            if (files.exists(photos)) {
                BURROW_DO(renameTo(photos, pictures::Store::folderFor(path)));
            }
            auto moved = renameTo(unfinished, path);
            if (!moved) removeBook(path);  // which is only its photos
            return moved;
        };
        if (const auto moved = move(); !moved) taken = failAs(moved);
    }
    if (!taken) removeBook(unfinished);
    return taken;
}

}  // namespace burrow::exchange
