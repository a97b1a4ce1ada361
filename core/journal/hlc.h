// Hybrid logical clock (Kulkarni, Demirbas, Madeppa, Avva & Leone, "Logical Physical Clocks", OPODIS
// 2014): follows the wall clock where it can, and never runs backwards.
#pragma once

#include <algorithm>
#include <cstdint>

#include "base/civil.h"

namespace burrow::hlc {

/// Milliseconds in the upper 48 bits, a counter in the lower 16.
[[nodiscard]] constexpr std::int64_t pack(std::int64_t ms, std::int64_t counter) {
    return ms << 16 | counter;
}
[[nodiscard]] constexpr std::int64_t milliseconds(std::int64_t stamp) { return stamp >> 16; }

/// The stamp of the next local event, above every stamp made or heard so far.
[[nodiscard]] constexpr std::int64_t next(std::int64_t last, Instant now) {
    // A counter that overflows carries into the milliseconds, which keeps the order.
    return std::max(pack(now.ms, 0), last + 1);
}

/// How far a stamp may lie ahead of the clock here to be followed: no honest clock is a day off, and a
/// device set to 2099 must not take all others there with it.
inline constexpr std::int64_t mostAheadMs = 86'400'000;

[[nodiscard]] constexpr bool isAhead(std::int64_t stamp, Instant now) {
    return milliseconds(stamp) > now.ms + mostAheadMs;
}
/// The stamp to continue from: one that is too far ahead counts for nothing.
[[nodiscard]] constexpr std::int64_t bounded(std::int64_t stamp, Instant now) {
    return isAhead(stamp, now) ? 0 : stamp;
}

}  // namespace burrow::hlc
