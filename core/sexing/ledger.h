// The lines of the ledger and their weights, before anybody asks what follows from them. Private to this
// room.
#pragma once

#include "sexing/judge.h"

namespace burrow::sexing {

/// Sightings that see the same skin, or the same colours.
struct SameThing {
    std::vector<std::size_t> lines;
    bool saysBoth = false;
};

struct Ledger {
    std::vector<Factor> lines;
    std::vector<SameThing> things;  ///< of those that tell something and settle nothing
    bool isDecisive = false;
    bool isDisputed = false;
    double female = 0.5;
};

[[nodiscard]] Ledger ledgerOf(std::span<const Sighting> sightings, const SexingRules& rules,
                              std::string_view species);

/// P of odds given as their logarithm, without overflow at either end.
[[nodiscard]] double chanceOf(double logOdds);
[[nodiscard]] double logOddsOf(double chance);

/// What was seen, and what it counts for.
[[nodiscard]] Message seenMessage(const Sighting& seen);
[[nodiscard]] Message countedMessage(const Factor& line);
/// "4.5" of 4.4928, "32" of 31.8: as sure as a rule of thumb is.
[[nodiscard]] double roundedRatio(double ratio);

}  // namespace burrow::sexing
