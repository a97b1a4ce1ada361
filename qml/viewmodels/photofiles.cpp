#include "viewmodels/photofiles.h"

#include "pictures/store.h"

namespace burrow {
namespace {

QUrl urlOf(const std::filesystem::path& path) {
    return QUrl::fromLocalFile(QString::fromStdString(path.string()));
}

}  // namespace

QUrl pictureUrl(const Desk& desk, const Sha256& picture) {
    DeviceFiles files;
    const pictures::Store store(pictures::Store::folderFor(desk.bookPath()), files);
    // Another device may have sent only its smaller copy.
    const auto reduced = store.reducedPath(picture);
    const bool hasOnlyReduced = !files.exists(store.picturePath(picture)) && files.exists(reduced);
    return urlOf(hasOnlyReduced ? reduced : store.picturePath(picture));
}

QUrl thumbnailUrl(const Desk& desk, const Sha256& picture) {
    DeviceFiles files;
    return urlOf(
        pictures::Store(pictures::Store::folderFor(desk.bookPath()), files).thumbnailPath(picture));
}

}  // namespace burrow
