// When the air of a place was outside the range of those who live there.
#pragma once

#include <algorithm>
#include <optional>
#include <span>
#include <vector>

#include "air/sample.h"
#include "base/message.h"
#include "model/profile.h"

namespace burrow::air {

/// What a species, or all that stand in a place, can live with.
struct AirRange {
    std::optional<Range<Celsius>> warmth;
    std::optional<Range<Percent>> humidity;
};

enum class Breach { tooCold, tooWarm, tooDry, tooDamp };

struct Alarm {
    Breach breach = Breach::tooWarm;
    Instant from;
    Instant until;        ///< the last reading outside
    double worst = 0;     ///< degrees or percent
    double limit = 0;     ///< of the range, at that side
    bool isOpen = false;  ///< still outside at the last reading
    Message why;
};

/// Stretches of readings outside the range, by when they began and then in the order of `Breach`. One
/// ends when the air is inside again by the `back` of its rule, or when readings pause for longer than
/// `longestGapMinutes`; those shorter than `leastMinutes` are left out, but not one that is still open.
/// Samples in the order of time. O(n).
[[nodiscard]] std::vector<Alarm> alarms(std::span<const Sample> samples, const AirRange& range,
                                        const AirRules& rules);

/// The range in which all of several can live: from the greatest least to the smallest most; nothing
/// where there is none, or nobody says.
template <class Unit>
[[nodiscard]] std::optional<Range<Unit>> sharedRange(std::span<const Range<Unit>> ranges) {
    if (ranges.empty()) return std::nullopt;
    auto shared = ranges.front();
    for (const auto& range : ranges) {
        shared.least = std::max(shared.least, range.least);
        shared.most = std::min(shared.most, range.most);
    }
    if (shared.least > shared.most) return std::nullopt;
    return shared;
}

}  // namespace burrow::air
