// Warmth as development counts it: day-degrees above a base, civil day by civil day.
#pragma once

#include <optional>
#include <span>
#include <vector>

#include "air/sample.h"
#include "base/zone.h"

namespace burrow::air {

/// Warmth below the base does nothing; above `top`, where there is one, no more than at it.
struct WarmthScale {
    Celsius base;
    std::optional<Celsius> top;
};

struct DayWarmth {
    CivilDay day;
    Celsius least;  ///< of the readings, and of the line between them at midnight
    Celsius most;
    Celsius mean;      ///< over the time that is covered
    double hours = 0;  ///< covered by readings
    /// Mean excess over the base times one day. Nothing where fewer than `enoughHours` are covered.
    std::optional<double> dayDegrees;
};

constexpr double enoughHours = 18;

/// Days with at least one stretch between two readings. Samples in the order of time; readings are
/// joined by straight lines unless they are further apart than `longestGapMinutes`, and the excess of the
/// line over the base is integrated exactly. Days are civil days of the zone: one of 23 or 25 hours
/// counts as one day. O(n).
[[nodiscard]] std::vector<DayWarmth> warmthByDay(std::span<const Sample> samples,
                                                 const WarmthScale& scale, const Zone& zone,
                                                 const AirRules& rules);

/// Day-degrees of a day of which only the extremes are known: its temperature taken as one turn of a
/// sine (Baskerville & Emin 1969, Ecology 50:514-517), with a horizontal cut-off at `top`.
[[nodiscard]] double dayDegreesBetween(Celsius least, Celsius most, const WarmthScale& scale);

}  // namespace burrow::air
