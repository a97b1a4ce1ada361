// What a bundle says of itself: who wrote it, when, what is in it and what was left out. FORMAT.md
// describes the JSON and keeps the dated list of its versions.
#pragma once

#include <map>
#include <string>

#include "exchange/tally.h"
#include "journal/version_vector.h"

namespace burrow::exchange {

namespace limit {
inline constexpr std::uint64_t manifestBytes = 32u << 20U;
inline constexpr std::int64_t entries = 20'000'000;
inline constexpr std::int64_t animals = 1'000'000;
inline constexpr std::size_t photos = 100'000;
inline constexpr std::size_t authors = 10'000;
inline constexpr std::size_t nameBytes = 4096;  ///< of a room, a code, a program
}  // namespace limit

/// The version of the format that this program writes, and the newest it reads.
inline constexpr int bundleVersion = 1;

enum class Extent {
    everything,  ///< the whole book
    lacking,     ///< what another device was not known to have
    chosen       ///< some animals and what belongs to them
};
enum class PhotoChoice { none, reduced, full };

[[nodiscard]] std::string_view name(Extent extent);
[[nodiscard]] std::string_view name(PhotoChoice choice);
[[nodiscard]] std::optional<PhotoChoice> parsePhotoChoice(std::string_view text);

struct ReducedPhoto {
    Sha256 sha256;  ///< of the reduced copy; it is named by that of the full one
    std::uint64_t bytes = 0;

    friend bool operator==(const ReducedPhoto&, const ReducedPhoto&) = default;
};

struct Manifest {
    std::string program;  ///< that wrote it
    BookId book;
    std::string room;
    std::string roomCode;
    DeviceId device;  ///< that wrote it
    Instant writtenAt;
    Extent extent = Extent::everything;
    std::optional<DeviceId> madeFor;  ///< with `lacking`
    PhotoChoice photoChoice = PhotoChoice::none;
    bool withConfidential = false;
    std::int64_t missingPhotos = 0;  ///< named, but not on the device that wrote this
    Totals totals;
    VersionVector vector;  ///< what the book of that device holds
    std::map<Sha256, std::uint64_t> photos;
    std::map<Sha256, ReducedPhoto> reduced;  ///< by the full one

    [[nodiscard]] std::uint64_t photoBytes() const;
    friend bool operator==(const Manifest&, const Manifest&) = default;
};

[[nodiscard]] std::string toText(const Manifest& manifest);

/// Fails with `newer` for a later version of the format, and with `badInput` for what is no manifest
/// or is over the limits.
Result<Manifest> manifestFrom(std::string_view bytes);

namespace filename {
inline constexpr const char* manifest = "manifest.json";
inline constexpr const char* entries = "entries.jsonl";
[[nodiscard]] std::string photo(const Sha256& picture);
[[nodiscard]] std::string reduced(const Sha256& full);
}  // namespace filename

}  // namespace burrow::exchange
