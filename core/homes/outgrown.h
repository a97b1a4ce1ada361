// When a home will be outgrown, from what is expected of the next moults. Whoever forecasts moults and
// growth is asked elsewhere; here their answer is put against the size of the home.
#pragma once

#include <optional>

#include "homes/space.h"

namespace burrow::homes {

/// When the next moults come. Times are log-normal and independent.
struct MoultOutlook {
    double nextDays = 0;       ///< median days from today to the next moult
    double nextSpread = 0.3;   ///< standard deviation of its logarithm
    double laterDays = 0;      ///< median days from that one to the one after
    double laterSpread = 0.3;  ///< of it and all following ones
    double lengthening = 1;    ///< each following interval is so many times as long
};

/// How a moult makes it grow: ln(L' / L) = k ln(limit / L), a Gompertz curve over moults, with k such
/// that the next moult has this ratio; without a limit the ratio is the same each time (the classic rule
/// of Dyar 1890, Psyche 5:420-422).
struct GrowthOutlook {
    double ratio = 1.2;       ///< span after the next moult over span now, median
    double spread = 0.05;     ///< standard deviation of its logarithm, each moult; it never shrinks
    double spanError = 0.03;  ///< of the logarithm of the span now
    std::optional<Millimetres> limit;  ///< what it grows towards
};

struct Outgrown {
    bool now = false;              ///< it is too large for its home already
    double chanceAtNextMoult = 0;  ///< that the next moult makes it so
    double chanceEver = 0;         ///< within `moultsAhead` moults
    std::optional<int> early;      ///< days from today: 10 of 100 are outgrown by then
    std::optional<int> median;     ///< nothing where the chance never gets that high
    std::optional<int> late;       ///< 90 of 100
    Message why;
};

constexpr int moultsAhead = 12;

/// Nothing where no size of the home is recorded. An animal grows by moulting only, so the home is
/// outgrown on the day of a moult: the chance of each of the next moults being the one, times the
/// distribution of its day. The sum of log-normal times is taken as log-normal with the same mean and
/// variance (Fenton 1960, IRE Trans. Commun. Syst. 8:57-67). Against simulation the quantiles are within
/// 2 %. O(moultsAhead).
[[nodiscard]] std::optional<Outgrown> outgrown(const Dweller& dweller, const Enclosure& home,
                                               const MoultOutlook& moults,
                                               const GrowthOutlook& growth);

}  // namespace burrow::homes
