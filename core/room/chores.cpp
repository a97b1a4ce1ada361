#include "room/chores.h"

#include <system_error>

#include "journal/photos.h"
#include "pictures/store.h"

namespace burrow {
namespace {

namespace fs = std::filesystem;
using storage::Access;
using storage::Connection;

/// Every book in the folder of backups, whatever its name: those put aside name photos as well.
std::vector<fs::path> otherBooks(const fs::path& book) {
    std::vector<fs::path> books;
    std::error_code error;
    for (fs::directory_iterator files(Backups::folderFor(book), error);
         !error && files != fs::directory_iterator(); files.increment(error)) {
        if (files->path().extension() == ".book") books.push_back(files->path());
    }
    return books;
}

}  // namespace

Result<Chores> doChores(const fs::path& book, const Clock& clock, const Zone& zone) {
    Chores done;
    BURROW_TRY(done.sweptPhotos, sweepPhotos(book));
    BURROW_TRY(done.backup, Backups(book, clock, zone).makeIfDue());
    return done;
}

Result<std::int64_t> sweepPhotos(const fs::path& book, std::chrono::seconds age) {
    const auto folder = pictures::Store::folderFor(book);
    BURROW_TRY(auto photos, pictures::settledPhotos(folder, age));
    {
        BURROW_TRY(auto connection, Connection::open(book, Access::readOnly));
        BURROW_DO(crossOutNamed(connection, photos));
    }
    for (const auto& other : otherBooks(book)) {
        if (photos.empty()) break;
        auto connection = Connection::open(other, Access::readOnly);
        if (!connection || !crossOutNamed(*connection, photos)) photos.clear();
    }
    return pictures::removePhotos(folder, photos, age);
}

Result<PhotoState> lookOverPhotos(Book& book, Files& files) {
    PhotoState state;
    pictures::Store store(pictures::Store::folderFor(book.path()), files);
    BURROW_TRY(const auto shown, picturesShown(book.connection()));
    for (const auto& picture : shown) {
        if (!files.exists(store.picturePath(picture))) {
            ++state.elsewhere;
        } else {
            ++(store.isIntact(picture) ? state.whole : state.damaged);
        }
    }
    return state;
}

}  // namespace burrow
