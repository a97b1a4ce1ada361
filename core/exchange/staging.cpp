#include "exchange/staging.h"

#include <fcntl.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include <algorithm>
#include <cerrno>
#include <system_error>
#include <utility>

#include "base/text.h"
#include "exchange/tally.h"

namespace burrow::exchange {
namespace {

namespace fs = std::filesystem;

constexpr const char* lockName = "lock";
constexpr const char* placingName = "placing";
constexpr const char* reducedWord = "reduced ";
constexpr const char* fullWord = "full ";

/// The list of what is being placed, one line each: what has to be looked at after a crash.
std::string listOf(const std::vector<Staged>& photos) {
    std::string text;
    for (const auto& photo : photos) {
        text += (photo.isReduced ? reducedWord : fullWord) + photo.picture.hex() + '\n';
    }
    return text;
}

std::vector<Staged> readList(std::string_view text) {
    std::vector<Staged> photos;
    for (const auto line : split(text, '\n')) {
        const auto space = line.find(' ');
        if (space == std::string_view::npos) continue;
        if (const auto picture = Sha256::parse(line.substr(space + 1))) {
            photos.push_back({*picture, line.starts_with(reducedWord)});
        }
    }
    return photos;
}

fs::path placeOf(const pictures::Store& store, const Staged& photo) {
    return photo.isReduced ? store.reducedPath(photo.picture) : store.picturePath(photo.picture);
}

/// The thumbnail stays while there is another form of the same photo.
Done removePhoto(const pictures::Store& store, Files& files, const Staged& photo) {
    BURROW_DO(files.remove(placeOf(store, photo)));
    if (files.exists(placeOf(store, {photo.picture, !photo.isReduced}))) return {};
    return files.remove(store.thumbnailPath(photo.picture));
}

Done move(const fs::path& from, const fs::path& to) {
    std::error_code error;
    fs::create_directories(to.parent_path(), error);
    if (!error) fs::rename(from, to, error);
    if (error) return failFromErrno(error.value(), to);
    return {};
}

}  // namespace

fs::path stagingFolderFor(const fs::path& book) {
    auto folder = book;
    folder += "-staging";
    return folder;
}

Staging::Staging(Book& book, Files& files, int lock)
    : book_(&book),
      files_(&files),
      store_(pictures::Store::folderFor(book.path()), files),
      folder_(stagingFolderFor(book.path())),
      lock_(lock) {}

Staging::Staging(Staging&& other) noexcept
    : book_(other.book_),
      files_(other.files_),
      store_(std::move(other.store_)),
      folder_(std::move(other.folder_)),
      lock_(std::exchange(other.lock_, -1)),
      placed_(std::move(other.placed_)) {}

Result<Staging> Staging::open(Book& book, Files& files) {
    const auto folder = stagingFolderFor(book.path());
    std::error_code error;
    fs::create_directories(folder, error);
    if (error) return failFromErrno(error.value(), folder);
    const auto lockPath = folder / lockName;
    const int lock = ::open(lockPath.c_str(), O_RDWR | O_CREAT | O_CLOEXEC | O_NOFOLLOW, 0600);
    if (lock < 0) return failFromErrno(errno, lockPath);
    if (::flock(lock, LOCK_EX | LOCK_NB) != 0 && errno == EWOULDBLOCK) {
        ::close(lock);
        return fail(Trouble::locked, {"bundle.busy"});
    }
    struct stat status {};
    if (::fstat(lock, &status) == 0 && status.st_nlink == 0) {  // its last holder removed it
        ::close(lock);
        return open(book, files);
    }
    Staging staging(book, files, lock);
    BURROW_DO(staging.putInOrder());
    return staging;
}

/// Photos that were being placed when a run died: their entries are in the book, or they go.
Done Staging::putInOrder() {
    constexpr std::uint64_t listLimit = 16'000'000;
    const auto list = folder_ / placingName;
    if (files_->exists(list)) {
        BURROW_TRY(const auto bytes, files_->read(list, listLimit));
        BURROW_DO(removeUnnamed(*book_, *files_, readList(textOf(bytes))));
        BURROW_DO(files_->remove(list));
    }
    std::error_code error;
    for (fs::directory_iterator at(folder_, error), end; !error && at != end; at.increment(error)) {
        if (at->path().filename() == lockName) continue;
        std::error_code ignored;
        fs::remove_all(at->path(), ignored);
    }
    return {};
}

Staging::~Staging() {
    if (lock_ < 0) return;
    bool isClean = true;
    for (const auto& photo : placed_) {
        isClean = removePhoto(store_, *files_, photo).has_value() && isClean;
    }
    // Where something could not be removed, the list stays for the next start.
    std::error_code ignored;
    if (isClean) fs::remove_all(folder_, ignored);
    ::close(lock_);
}

fs::path Staging::stagedPath(const Staged& photo) const {
    return folder_ / (photo.picture.hex() + (photo.isReduced ? ".reduced" : ".full"));
}

bool Staging::isHere(const Staged& photo) const {
    // Who has the picture needs no smaller copy of it.
    const bool hasFull = files_->exists(store_.picturePath(photo.picture));
    return hasFull || (photo.isReduced && files_->exists(store_.reducedPath(photo.picture)));
}

Done Staging::stage(const Staged& photo, std::span<const std::uint8_t> bytes,
                    std::span<const std::uint8_t> thumbnail) {
    const auto path = stagedPath(photo);
    if (!thumbnail.empty()) {
        BURROW_DO(files_->write(path.string() + ".thumbnail", thumbnail));
    }
    return files_->write(path, bytes);
}

Done Staging::place(const std::vector<Staged>& photos) {
    std::vector<Staged> wanted;
    for (const auto& photo : photos) {
        if (files_->exists(stagedPath(photo)) && !isHere(photo)) wanted.push_back(photo);
    }
    if (wanted.empty()) return {};
    BURROW_DO(doubt(wanted));
    std::set<fs::path> folders;
    for (const auto& photo : wanted) {
        placed_.push_back(photo);
        const auto thumbnail = stagedPath(photo).string() + ".thumbnail";
        if (files_->exists(thumbnail)) {
            BURROW_DO(move(thumbnail, store_.thumbnailPath(photo.picture)));
        }
        BURROW_DO(move(stagedPath(photo), placeOf(store_, photo)));
        folders.insert(placeOf(store_, photo).parent_path());
    }
    for (const auto& folder : folders) BURROW_DO(syncFolder(folder));
    return {};
}

Done Staging::doubt(const std::vector<Staged>& photos) {
    return files_->write(folder_ / placingName, bytesOf(listOf(photos)));
}

void Staging::keep() {
    for (const auto& photo : placed_) {
        // The picture itself came: its smaller copy has done its work.
        if (!photo.isReduced) {
            static_cast<void>(files_->remove(store_.reducedPath(photo.picture)));
        }
    }
    placed_.clear();
}

Done sweepStaging(Book& book, Files& files) {
    if (!files.exists(stagingFolderFor(book.path()))) return {};
    const auto staging = Staging::open(book, files);
    if (!staging && staging.error().trouble != Trouble::locked) return failAs(staging);
    return {};
}

Result<std::set<Sha256>> namedPictures(storage::Connection& connection,
                                       const std::vector<Staged>& photos) {
    std::set<Sha256> asked;
    for (const auto& photo : photos) asked.insert(photo.picture);
    std::set<Sha256> named;
    BURROW_TRY(auto rows, connection.query("SELECT " BURROW_ENTRY_COLUMNS
                                           "WHERE instr(e.body, '\"picture\"') > 0"));
    while (true) {
        BURROW_TRY(const bool more, rows.next());
        if (!more) return named;
        Tally tally;
        tally.add(storedEntryAt(rows));
        for (const auto& photo : tally.photos()) {
            if (asked.contains(photo.picture)) named.insert(photo.picture);
        }
    }
}

Done removeUnnamed(Book& book, Files& files, const std::vector<Staged>& photos) {
    if (photos.empty()) return {};
    BURROW_TRY(const auto named, namedPictures(book.connection(), photos));
    const pictures::Store store(pictures::Store::folderFor(book.path()), files);
    for (const auto& photo : photos) {
        if (named.contains(photo.picture)) continue;
        BURROW_DO(removePhoto(store, files, photo));
    }
    return {};
}

}  // namespace burrow::exchange
