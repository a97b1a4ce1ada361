#include "exchange/share_photos.h"

#include "exchange/refuse.h"
#include "journal/rows.h"

namespace burrow::exchange {

namespace fs = std::filesystem;

SharedPhotos::SharedPhotos(Book& book, fs::path folder, Files& files, const ShareOptions& options,
                           const Listed& listed)
    : book_(book),
      folder_(std::move(folder)),
      files_(files),
      options_(options),
      listed_(listed),
      store_(pictures::Store::folderFor(book.path()), files) {
    for (const auto& [device, photos] : listed) {
        for (const auto& photo : photos) there_[photo.full] |= !photo.isReduced();
    }
}

Result<std::map<Sha256, bool>> SharedPhotos::named() {
    std::map<Sha256, bool> pictures;
    BURROW_TRY(auto rows, book_.connection().query(
                              "SELECT f.entry, f.subject, f.kind, f.day, f.happened_at, f.hlc, "
                              "f.body, EXISTS (SELECT 1 FROM confidential c WHERE c.entry = "
                              "f.entry) FROM fact f WHERE f.kind = 'photo'"));
    while (true) {
        BURROW_TRY(const bool more, rows.next());
        if (!more) return pictures;
        const auto fact = factAt(rows);
        if (!fact || !fact->body.picture) continue;
        const bool isOpen = rows.integer(7) == 0 && !fact->body.confidential.value_or(false);
        pictures[*fact->body.picture] |= isOpen;
    }
}

Done SharedPhotos::takeIn(ShareReport& report) {
    BURROW_TRY(const auto pictures, named());
    for (const bool reduced :
         {false, true}) {  // the full ones first: they make the others needless
        for (const auto& [device, photos] : listed_) {
            if (device == book_.device()) continue;
            for (const auto& photo : photos) {
                if (photo.isReduced() != reduced || !pictures.contains(photo.full)) continue;
                if (files_.exists(store_.picturePath(photo.full))) continue;
                if (reduced && files_.exists(store_.reducedPath(photo.full))) continue;
                BURROW_DO(takeInOne(device, photo, report));
            }
        }
    }
    return {};
}

Done SharedPhotos::takeInOne(const DeviceId& device, const SharedPhoto& photo,
                             ShareReport& report) {
    const auto path = folder_ / device.text() / photo.path();
    const auto bytes = files_.read(path, pictures::Limits().bytes);
    const bool isWhole = bytes && Sha256::of(*bytes) == photo.sha256;
    const auto info =
        isWhole ? pictures::inspect(*bytes) : Result<pictures::PictureInfo>(refuse({"bundle.cut"}));
    if (!info || info->format != pictures::Format::jpeg) {
        report.waiting.push_back({device.text() + "/" + photo.path().string(),
                                  isWhole ? Message{"bundle.noPicture"} : Message{"bundle.cut"}});
        return {};
    }
    if (options_.developer != nullptr) {
        const auto small = options_.developer->reduce(*bytes, *info, pictures::thumbnailSide);
        if (small) BURROW_DO(files_.write(store_.thumbnailPath(photo.full), *small));
    }
    const auto reducedPath = store_.reducedPath(photo.full);
    BURROW_DO(
        files_.write(photo.isReduced() ? reducedPath : store_.picturePath(photo.full), *bytes));
    if (!photo.isReduced()) BURROW_DO(files_.remove(reducedPath));
    ++report.photosAdded;
    return {};
}

Done SharedPhotos::writeOut(ShareReport& report) {
    if (options_.photos == PhotoChoice::none) return {};
    BURROW_TRY(const auto pictures, named());
    std::uint64_t done = 0;
    for (const auto& [picture, isOpen] : pictures) {
        if (options_.onProgress && !options_.onProgress({Step::photos, done++, pictures.size()})) {
            return refuse({"bundle.stopped"});
        }
        const auto at = there_.find(picture);
        const bool isThere =
            at != there_.end() && (at->second || options_.photos == PhotoChoice::reduced);
        const bool isWanted = isOpen || options_.withConfidential;
        if (isWanted && !isThere) BURROW_DO(writeOne(picture, report));
    }
    return {};
}

Done SharedPhotos::writeOne(const Sha256& picture, ShareReport& report) {
    auto bytes = files_.read(store_.picturePath(picture), pictures::Limits().bytes);
    if (!bytes || Sha256::of(*bytes) != picture) return {};  // not on this device, or damaged here
    if (options_.photos == PhotoChoice::reduced) {
        const auto info = pictures::inspect(*bytes);
        if (!info || options_.developer == nullptr) return {};
        BURROW_TRY(bytes, options_.developer->reduce(*bytes, *info, pictures::reducedSide));
    }
    const SharedPhoto photo{picture, Sha256::of(*bytes)};
    BURROW_DO(files_.write(folder_ / book_.device().text() / photo.path(), *bytes));
    ++report.photosWritten;
    return {};
}

}  // namespace burrow::exchange
