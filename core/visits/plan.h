// Feeding days: which of the keeper's weekdays to feed on, so that everyone is fed within its window
// in as few visits as can be. Civil days only; pure functions.
#pragma once

#include <array>
#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "base/civil.h"
#include "base/result.h"

namespace burrow::visits {

/// When one subject is to be fed; both ends belong to the window.
struct FeedingWindow {
    std::size_t who = 0;  ///< the caller's own number for the subject
    CivilDay opens;
    CivilDay best;
    CivilDay late;
    int priority = 0;  ///< where an evening is full the greater goes first
};

/// When the keeper feeds.
struct FeedingDays {
    std::array<bool, 7> weekdays{};  ///< from Sunday, as `weekday()` counts
    std::vector<CivilDay> except;    ///< days on which nobody feeds
    std::optional<int> most;         ///< subjects in one evening, where there is a limit
};

struct Visit {
    CivilDay day;
    std::vector<std::size_t> who;  ///< in the order in which they were given

    friend bool operator==(const Visit&, const Visit&) = default;
};

enum class AloneBecause {
    noFeedingDay,  ///< none falls into its window
    full,          ///< all that do are full with those of higher priority
    farAhead       ///< it opens more than `farthestAhead` days from today
};

/// A subject that none of the visits feeds.
struct Alone {
    std::size_t who = 0;
    CivilDay day;  ///< when to feed it instead
    AloneBecause because = AloneBecause::noFeedingDay;
    Message why;
};

struct VisitPlan {
    std::vector<Visit> visits;  ///< by day
    std::vector<Alone> alone;   ///< in the order in which they were given
    /// Subjects no two of which can share a visit: why there are no fewer visits. As many as visits,
    /// unless `most` asks for more of them.
    std::vector<std::size_t> apart;
    Message why;
};

constexpr int farthestAhead = 366;

/// Fewest visits from today on that feed everyone within its window; of all such plans one close to
/// the best days. A window that is past already counts as open from today to the next feeding day. With
/// `most` no evening takes more; where that leaves no room for all, as many as can be are fed, by
/// priority. Without `most`, or where it does not bind, the days are those with the least distance to
/// the best days; where it binds they are the latest possible, and the nearest to its best day is
/// chosen for one subject after another.
///
/// O(n log n + n w^2 + d^2) for windows of w of the d feeding days ahead, and with a binding `most`
/// O(n log n + n v^2 + g d^2) for v visits and g different windows; d is at most 366.
/// Fails with `badInput` for a window that ends before it opens or whose best day lies outside, and
/// for a `most` below 1.
[[nodiscard]] Result<VisitPlan> planVisits(std::span<const FeedingWindow> windows,
                                           const FeedingDays& days, CivilDay today);

}  // namespace burrow::visits
