// The whole life of an animal as its two drawings take it: the moult line and growth in steps.
#pragma once

#include "viewmodels/wording.h"

namespace burrow {

struct LifeLine {
    MoultLineData line;
    QVariantList labels;  ///< a year at its first day
    QStringList entries;  ///< of the marks, in their order

    friend bool operator==(const LifeLine&, const LifeLine&) = default;
};

/// `facts` newest first, as history() gives them.
[[nodiscard]] LifeLine lifeLine(const Resident& resident, std::span<const Fact> facts,
                                const Desk& desk);

struct Growth {
    QVariantList points;
    QVariantList labels;
    QString unit;         ///< "leg span, mm"
    QString description;  ///< in words, for a screen reader

    friend bool operator==(const Growth&, const Growth&) = default;
};

/// Carapace where it was measured at least as often as the leg span, which is less exact; empty for
/// fewer than two sizes.
[[nodiscard]] Growth growthOf(const Resident& resident, std::span<const Fact> facts,
                              const Desk& desk);

}  // namespace burrow
