// Whom a room holds, as compact bytes: a large room keeps everyone so, and unpacks whom it shows. Lives in
// memory only.
#pragma once

#include "base/files.h"
#include "journal/roster.h"

namespace burrow {

[[nodiscard]] Bytes packed(const Kept& kept);
/// `bytes` must come from packed().
[[nodiscard]] Kept unpacked(std::span<const std::uint8_t> bytes);

/// What decides where it stands in a walk, without unpacking the rest.
struct WalkPlace {
    bool isQuarantined = false;
    Place place;
    std::string number;
    SubjectId id;
};
[[nodiscard]] WalkPlace walkPlace(std::span<const std::uint8_t> bytes);

}  // namespace burrow
