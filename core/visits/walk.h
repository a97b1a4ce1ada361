// The walk of a visit: along the racks, shelf by shelf, without going back. Pure functions.
#pragma once

#include <cstddef>
#include <span>
#include <string>
#include <vector>

#include "model/place.h"

namespace burrow::visits {

struct Stop {
    Place place;
    std::string number;  ///< of its tag; decides where the position on the shelf does not
    bool quarantined = false;
};

/// Positions in `stops` in walking order. Racks come in the order of `racks` (room and rack count;
/// those not named follow in natural order), within a rack shelf by shelf: every second shelf from its
/// far end, and every second rack from its last shelf, so that each begins near where the last one
/// ended. Stops without a place follow; quarantine is last, as a walk of its own, so that nothing is
/// carried from it to the rest. O(n log n).
[[nodiscard]] std::vector<std::size_t> walk(std::span<const Stop> stops,
                                            std::span<const Place> racks = {});

}  // namespace burrow::visits
