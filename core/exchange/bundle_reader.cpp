#include "exchange/bundle_reader.h"

#include <unordered_map>

#include "exchange/entry_line.h"
#include "exchange/refuse.h"
#include "exchange/zip_reader.h"
#include "pictures/inspect.h"

namespace burrow::exchange {
namespace {

namespace fs = std::filesystem;

constexpr std::size_t bufferBytes = std::size_t{256} * 1024;

/// That the files inside are those of the manifest, no more and no fewer, and of its sizes.
Done checkItems(const Manifest& manifest,
                const std::unordered_map<std::string, std::uint64_t>& items) {
    const auto has = [&](const std::string& name, std::uint64_t bytes) {
        const auto at = items.find(name);
        return at != items.end() && at->second == bytes;
    };
    bool isSame = items.size() == 2 + manifest.photos.size() + manifest.reduced.size() &&
                  items.contains(filename::manifest) &&
                  has(filename::entries, manifest.totals.bytes);
    const auto most = pictures::Limits().bytes;
    for (const auto& [picture, bytes] : manifest.photos) {
        isSame = isSame && bytes <= most && has(filename::photo(picture), bytes);
    }
    for (const auto& [full, copy] : manifest.reduced) {
        isSame = isSame && copy.bytes <= most && has(filename::reduced(full), copy.bytes);
    }
    return isSame ? Done() : Done(refuse({"bundle.otherFiles"}));
}

/// Cuts what comes in pieces into lines.
class Lines {
public:
    explicit Lines(ZipReader& zip) : zip_(zip), buffer_(bufferBytes) {}

    /// The next line without its end, valid until the next call; nothing after the last.
    Result<std::optional<std::string_view>> next(Tally& tally) {
        while (true) {
            const auto rest = textOf(std::span(buffer_).first(filled_)).substr(at_);
            const auto end = rest.find('\n', searched_);
            if (end != std::string_view::npos) {
                at_ += end + 1;
                searched_ = 0;
                return std::optional(rest.substr(0, end));
            }
            if (rest.size() > limit::lineBytes) return refuse({"line.tooLong"});
            if (ended_ && !rest.empty()) return refuse({"bundle.damaged"});  // no end of line
            if (ended_) return std::optional<std::string_view>();
            searched_ = rest.size();
            BURROW_DO(fill(tally));
        }
    }

private:
    Done fill(Tally& tally) {
        std::copy(buffer_.begin() + static_cast<std::ptrdiff_t>(at_),
                  buffer_.begin() + static_cast<std::ptrdiff_t>(filled_), buffer_.begin());
        filled_ -= at_;
        at_ = 0;
        const auto room = std::span(buffer_).subspan(filled_);
        BURROW_TRY(const auto got, zip_.read(room));
        tally.addBytes(room.first(got));
        filled_ += got;
        ended_ = got < room.size();
        return {};
    }

    ZipReader& zip_;
    Bytes buffer_;
    std::size_t at_ = 0;
    std::size_t filled_ = 0;
    std::size_t searched_ = 0;  // of the rest, without finding an end
    bool ended_ = false;
};
static_assert(bufferBytes > 2 * limit::lineBytes);

/// The same error with the line it was found in.
tl::unexpected<Error> inLine(Error error, std::int64_t line) {
    if (error.message.id.starts_with("line.")) {
        error.message.arguments.push_back({"line", line});
    }
    return tl::unexpected<Error>(std::move(error));
}

Result<ZipReader> zipAt(const fs::path& path, const std::string& name) {
    BURROW_TRY(auto zip, ZipReader::open(path));
    while (true) {
        BURROW_TRY(const auto item, zip.next());
        if (!item) return refuse({"bundle.damaged"});
        if (item->name == name) return zip;
    }
}

}  // namespace

Result<BundleReader> BundleReader::open(const fs::path& path) {
    BURROW_TRY(auto zip, ZipReader::open(path));
    std::unordered_map<std::string, std::uint64_t> items;
    std::optional<Manifest> manifest;
    while (true) {
        BURROW_TRY(const auto item, zip.next());
        if (!item) break;
        items[item->name] = item->bytes;
        if (item->name != filename::manifest) continue;
        BURROW_TRY(const auto text, zip.readAll(limit::manifestBytes));
        BURROW_TRY(manifest, manifestFrom(textOf(text)));
    }
    if (!manifest) return refuse({"bundle.notABundle"});
    BURROW_DO(checkItems(*manifest, items));
    return BundleReader(path, *std::move(manifest));
}

Result<std::vector<NamedPhoto>> BundleReader::readEntries(const OnEntry& onEntry) const {
    BURROW_TRY(auto zip, zipAt(path_, filename::entries));
    Tally tally;
    Lines lines(zip);
    std::uint64_t bytes = 0;
    for (std::int64_t number = 1;; ++number) {
        const auto line = lines.next(tally);
        if (!line) return inLine(line.error(), number);
        if (!*line) break;
        bytes += (*line)->size() + 1;
        const auto entry = entryFromLine(**line);
        if (!entry) return inLine(entry.error(), number);
        tally.add(*entry);
        // Before it costs memory.
        if (tally.exceeds(manifest_.totals)) return refuse({"bundle.wrongHash"});
        if (tally.photos().size() > limit::photos * 10) return refuse({"bundle.tooLarge"});
        BURROW_DO(onEntry(*entry, bytes));
    }
    if (tally.finish() != manifest_.totals) return refuse({"bundle.wrongHash"});
    return tally.photos();
}

Done BundleReader::checkEntries(const OnBytes& onBytes) const {
    BURROW_TRY(auto zip, zipAt(path_, filename::entries));
    Bytes buffer(bufferBytes);
    Sha256Stream hash;
    std::uint64_t bytes = 0;
    while (true) {
        BURROW_TRY(const auto got, zip.read(buffer));
        hash.add(std::span(buffer).first(got));
        bytes += got;
        BURROW_DO(onBytes(bytes));
        if (got < buffer.size()) break;
    }
    if (hash.finish() != manifest_.totals.sha256) return refuse({"bundle.wrongHash"});
    return {};
}

Done BundleReader::readPhotos(const IsWanted& isWanted,
                              const std::function<Done(Photo)>& onPhoto) const {
    if (manifest_.photos.empty() && manifest_.reduced.empty()) return {};
    // By their names, which are made from hashes: no name of the file itself is used.
    std::unordered_map<std::string, std::pair<Photo, Sha256>> wanted;
    for (const auto& [picture, bytes] : manifest_.photos) {
        if (!isWanted(picture, false)) continue;
        wanted[filename::photo(picture)] = {Photo{picture, false, {}}, picture};
    }
    for (const auto& [full, copy] : manifest_.reduced) {
        if (!isWanted(full, true)) continue;
        wanted[filename::reduced(full)] = {Photo{full, true, {}}, copy.sha256};
    }
    BURROW_TRY(auto zip, ZipReader::open(path_));
    while (!wanted.empty()) {
        BURROW_TRY(const auto item, zip.next());
        if (!item) return refuse({"bundle.damaged"});
        const auto at = wanted.find(item->name);
        if (at == wanted.end()) continue;
        auto [photo, hash] = std::move(at->second);
        wanted.erase(at);
        BURROW_TRY(photo.bytes, zip.readAll(pictures::Limits().bytes));
        if (Sha256::of(photo.bytes) != hash) return refuse({"bundle.wrongHash"});
        BURROW_DO(onPhoto(std::move(photo)));
    }
    return {};
}

}  // namespace burrow::exchange
