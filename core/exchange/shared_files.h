// What lies in a shared folder: one folder for each device, and in it only files that this device wrote.
// Files are never changed once they have their name, so a sync engine has nothing to settle.
//
//     <device>/00000001-00000008-<16 hexadecimal digits>.burrow   its writings 1 to 8
//     <device>/photos/<SHA-256>.jpg
//     <device>/reduced/<SHA-256 of the full photo>-<SHA-256>.jpg
#pragma once

#include <compare>
#include <filesystem>
#include <map>
#include <optional>
#include <set>
#include <string>
#include <vector>

#include "base/hash.h"
#include "base/ids.h"
#include "base/result.h"

namespace burrow::exchange {

/// A bundle in a shared folder. One that stands for writings 1 to 8 replaces those for any of them.
struct Writing {
    std::int64_t first = 0;
    std::int64_t last = 0;
    std::string hash;  ///< the beginning of the SHA-256 of its entries

    [[nodiscard]] std::string name() const;
    [[nodiscard]] bool covers(const Writing& other) const {
        return first <= other.first && other.last <= last && *this != other;
    }
    /// Nothing for a name that is none: a conflict copy, a file on its way.
    [[nodiscard]] static std::optional<Writing> parse(std::string_view name);
    friend auto operator<=>(const Writing&, const Writing&) = default;
};

struct SharedPhoto {
    Sha256 full;
    Sha256 sha256;  ///< of the file: that of the full one, or of its smaller copy

    [[nodiscard]] bool isReduced() const { return full != sha256; }
    [[nodiscard]] std::filesystem::path path() const;  ///< below the device's folder
    friend auto operator<=>(const SharedPhoto&, const SharedPhoto&) = default;
};

struct SharedListing {
    std::map<DeviceId, std::set<Writing>> writings;
    std::map<DeviceId, std::set<SharedPhoto>> photos;
    std::int64_t passedOver = 0;  ///< names that are none of ours
};

/// Looks through the folder. Links are passed over, and so is what is not named as above. Fails with
/// `notFound` where there is no such folder: a stick that is not plugged in.
Result<SharedListing> listShared(const std::filesystem::path& folder);

/// Whether one of the others stands for it.
[[nodiscard]] bool isCovered(const Writing& writing, const std::set<Writing>& others);

/// Which of a device's own newest writings to put together into one: those that have grown to as many
/// of about the same size. So there are only ever a few files, and each entry is written again only
/// as often as its file grows fourfold. Sizes in bytes, oldest first; empty for none.
[[nodiscard]] std::vector<Writing> toPutTogether(
    const std::vector<std::pair<Writing, std::uint64_t>>& sizes);

}  // namespace burrow::exchange
