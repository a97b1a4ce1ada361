#include "exchange/shared_files.h"

#include <fmt/format.h>

#include <algorithm>
#include <system_error>

#include "base/text.h"

namespace burrow::exchange {
namespace {

namespace fs = std::filesystem;

constexpr std::string_view ending = ".burrow";
constexpr std::size_t digits = 8;
constexpr std::size_t hashDigits = 16;
constexpr std::size_t together = 4;

bool isHex(std::string_view text) {
    return text.find_first_not_of("0123456789abcdef") == std::string_view::npos;
}

/// Names of plain files in a folder; folders, links and what cannot be read are passed over.
template <class OnName>
void forEachFile(const fs::path& folder, OnName onName) {
    std::error_code error;
    for (fs::directory_iterator at(folder, error), end; !error && at != end; at.increment(error)) {
        std::error_code ignored;
        if (at->symlink_status(ignored).type() == fs::file_type::regular) {
            onName(at->path().filename().string());
        }
    }
}

std::optional<Sha256> hashIn(std::string_view name, std::string_view suffix) {
    if (!name.ends_with(suffix)) return std::nullopt;
    name.remove_suffix(suffix.size());
    return Sha256::parse(name);
}

void listPhotos(const fs::path& folder, const DeviceId& device, SharedListing& listing) {
    auto& photos = listing.photos[device];
    forEachFile(folder / "photos", [&](const std::string& name) {
        if (const auto picture = hashIn(name, ".jpg")) photos.insert({*picture, *picture});
    });
    forEachFile(folder / "reduced", [&](const std::string& name) {
        const auto dash = name.find('-');
        if (dash == std::string::npos) return;
        const auto full = Sha256::parse(std::string_view(name).substr(0, dash));
        const auto copy = hashIn(std::string_view(name).substr(dash + 1), ".jpg");
        if (full && copy) photos.insert({*full, *copy});
    });
}

int tier(std::uint64_t bytes) {
    constexpr std::uint64_t smallest = 4096;
    int tier = 0;
    for (auto size = bytes / smallest; size > 0; size /= together) ++tier;
    return tier;
}

}  // namespace

std::string Writing::name() const {
    return fmt::format("{:08}-{:08}-{}{}", first, last, hash, ending);
}

std::optional<Writing> Writing::parse(std::string_view name) {
    constexpr std::size_t length = digits + 1 + digits + 1 + hashDigits + ending.size();
    if (name.size() != length || !name.ends_with(ending)) return std::nullopt;
    const auto first = parseInteger(name.substr(0, digits));
    const auto last = parseInteger(name.substr(digits + 1, digits));
    const auto hash = name.substr(2 * digits + 2, hashDigits);
    if (!first || !last || *first < 1 || *last < *first || !isHex(hash)) return std::nullopt;
    Writing writing{*first, *last, std::string(hash)};
    return writing.name() == name ? std::optional(std::move(writing)) : std::nullopt;
}

fs::path SharedPhoto::path() const {
    if (!isReduced()) return fs::path("photos") / (full.hex() + ".jpg");
    return fs::path("reduced") / (full.hex() + "-" + sha256.hex() + ".jpg");
}

Result<SharedListing> listShared(const fs::path& folder) {
    std::error_code error;
    if (!fs::is_directory(folder, error)) {
        return fail(Trouble::notFound, {"share.noFolder", {{"folder", folder.string()}}});
    }
    SharedListing listing;
    for (fs::directory_iterator at(folder, error), end; !error && at != end; at.increment(error)) {
        const auto name = at->path().filename().string();
        const auto device = Uuid::parse(name);
        std::error_code ignored;
        const bool isFolder = at->symlink_status(ignored).type() == fs::file_type::directory;
        if (!device || device->text() != name || !isFolder) {
            if (!name.starts_with('.')) ++listing.passedOver;  // those are the sync engine's own
            continue;
        }
        const DeviceId id{*device};
        forEachFile(at->path(), [&](const std::string& file) {
            if (auto writing = Writing::parse(file)) {
                listing.writings[id].insert(*std::move(writing));
            } else if (!file.starts_with('.')) {
                ++listing.passedOver;
            }
        });
        listPhotos(at->path(), id, listing);
    }
    if (error) {
        return fail(Trouble::inputOutput,
                    {"file.trouble", {{"file", folder.string()}, {"cause", error.message()}}});
    }
    return listing;
}

bool isCovered(const Writing& writing, const std::set<Writing>& others) {
    return std::any_of(others.begin(), others.end(),
                       [&](const Writing& other) { return other.covers(writing); });
}

std::vector<Writing> toPutTogether(const std::vector<std::pair<Writing, std::uint64_t>>& sizes) {
    if (sizes.empty()) return {};
    const int newest = tier(sizes.back().second);
    std::vector<Writing> found;
    for (auto at = sizes.rbegin(); at != sizes.rend() && tier(at->second) <= newest; ++at) {
        found.insert(found.begin(), at->first);
    }
    if (found.size() < together) found.clear();
    return found;
}

}  // namespace burrow::exchange
