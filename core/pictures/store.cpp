#include "pictures/store.h"

namespace burrow::pictures {

namespace fs = std::filesystem;

fs::path Store::folderFor(const fs::path& book) {
    auto folder = book;
    folder += "-photos";
    return folder;
}

Result<KeptPhoto> Store::keep(std::span<const std::uint8_t> bytes, Developer& developer) {
    BURROW_TRY(const auto info, inspect(bytes));
    BURROW_TRY(const auto developed, developer.develop(bytes, info));
    const KeptPhoto photo{Sha256::of(developed.upright), Sha256::of(bytes)};
    // The copy that entries name comes last: where it is, the others are too.
    BURROW_DO(files_.write(originalPath(photo.original), bytes));
    BURROW_DO(files_.write(thumbnailPath(photo.picture), developed.thumbnail));
    BURROW_DO(files_.write(picturePath(photo.picture), developed.upright));
    return photo;
}

fs::path Store::picturePath(const Sha256& picture) const {
    return folder_ / "pictures" / (picture.hex() + ".jpg");
}

fs::path Store::thumbnailPath(const Sha256& picture) const {
    return folder_ / "thumbnails" / (picture.hex() + ".jpg");
}

fs::path Store::reducedPath(const Sha256& picture) const {
    return folder_ / "reduced" / (picture.hex() + ".jpg");
}

fs::path Store::originalPath(const Sha256& original) const {
    return folder_ / "originals" / original.hex();
}

bool Store::isIntact(const Sha256& picture) {
    const auto bytes = files_.read(picturePath(picture), Limits().bytes);
    return bytes && Sha256::of(*bytes) == picture;
}

}  // namespace burrow::pictures
