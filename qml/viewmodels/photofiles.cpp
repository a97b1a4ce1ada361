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

QStringList photoPaths(const Desk& desk, const FactBody& photo) {
    DeviceFiles files;
    const pictures::Store store(pictures::Store::folderFor(desk.bookPath()), files);
    QStringList paths;
    const auto add = [&](const std::filesystem::path& path) {
        paths.append(QString::fromStdString(path.string()));
    };
    if (photo.original) add(store.originalPath(*photo.original));
    if (photo.picture) {
        add(store.picturePath(*photo.picture));
        add(store.reducedPath(*photo.picture));
    }
    return paths;
}

QUrl thumbnailUrl(const Desk& desk, const Sha256& picture) {
    DeviceFiles files;
    return urlOf(
        pictures::Store(pictures::Store::folderFor(desk.bookPath()), files).thumbnailPath(picture));
}

}  // namespace burrow
