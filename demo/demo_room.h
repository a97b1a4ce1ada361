// An invented room, "Kiln Row": animals with years of meals, refusals, moults and losses, made from a
// seed. Nothing in it is real. The same options make the same book, byte for byte in what it says.
#pragma once

#include <cstdint>
#include <filesystem>

#include "base/zone.h"
#include "room/room.h"

namespace burrow::demo {

struct Options {
    int animals = 120;
    int years = 4;
    std::uint64_t seed = 1;
    CivilDay until;  ///< the last day of its history
    Zone zone = Zone::utc();
};

struct Made {
    std::int64_t subjects = 0;
    std::int64_t entries = 0;
};

/// Refuses when there is a file at `path` already.
Result<Made> makeRoom(const std::filesystem::path& path, const Options& options,
                      const Room::Reference& reference);

}  // namespace burrow::demo
