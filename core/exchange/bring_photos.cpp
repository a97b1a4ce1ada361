#include "exchange/bring_photos.h"

#include <algorithm>

namespace burrow::exchange {

Result<std::set<Sha256>> picturesNamed(std::span<const CsvSource> sources) {
    std::set<Sha256> pictures;
    for (const auto& source : sources) {
        if (source.kind != CsvKind::events) continue;
        BURROW_TRY(auto reader, CsvReader::open(source.text));
        const auto& header = reader.header();
        const auto found = std::find(header.begin(), header.end(), "picture");
        if (found == header.end()) continue;
        const auto at = static_cast<std::size_t>(found - header.begin());
        while (const auto row = reader.next()) {
            if (row->problem) continue;
            if (const auto picture = Sha256::parse(row->cells[at])) pictures.insert(*picture);
        }
    }
    return pictures;
}

IncomingPhotos::~IncomingPhotos() {
    for (const auto& path : placed_) static_cast<void>(files_.remove(path));
}

Done IncomingPhotos::take(const std::filesystem::path& folder, const std::set<Sha256>& pictures) {
    for (const auto& picture : pictures) {
        if (files_.exists(store_.picturePath(picture))) continue;
        const auto bytes = files_.read(folder / (picture.hex() + ".jpg"), pictures::Limits().bytes);
        // A photo that is missing, damaged or none keeps no record from coming in.
        if (!bytes || Sha256::of(*bytes) != picture) continue;
        BURROW_DO(place(picture, *bytes));
    }
    return {};
}

Done IncomingPhotos::place(const Sha256& picture, std::span<const std::uint8_t> bytes) {
    const auto info = pictures::inspect(bytes);
    if (!info) return {};
    const auto developed = developer_.develop(bytes, *info);
    if (!developed) return {};
    // The copy that entries name comes last: where it is, the other is too.
    placed_.push_back(store_.thumbnailPath(picture));
    BURROW_DO(files_.write(placed_.back(), developed->thumbnail));
    placed_.push_back(store_.picturePath(picture));
    BURROW_DO(files_.write(placed_.back(), bytes));
    ++count_;
    return {};
}

}  // namespace burrow::exchange
