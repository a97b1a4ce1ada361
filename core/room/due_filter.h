// Showing a part of what is due: some kinds of care, one room or rack, only what is late or held back.
#pragma once

#include <set>
#include <vector>

#include "room/room.h"

namespace burrow {

/// Whether the last good day has gone by.
[[nodiscard]] bool isLate(const Answer& answer, CivilDay today);

struct DueFilter {
    enum class Which { all, late, held };

    std::set<Care> care;  ///< empty: every kind
    /// Only what stands in that room and rack, as rackOf() gives them. Nothing: everywhere.
    std::optional<Place> where;
    Which which = Which::all;
    /// Those in quarantine come last, so that nothing is carried from them to the rest. Else each stands at
    /// its place in the walk.
    bool quarantineApart = true;

    /// Whether anything is left out or stands elsewhere than usual.
    [[nodiscard]] bool isActive() const { return *this != DueFilter{}; }
    friend bool operator==(const DueFilter&, const DueFilter&) = default;
};

/// Room and rack of a place: what a due list can be narrowed to.
[[nodiscard]] Place rackOf(const Place& place);

/// The visits with the answers that are wanted, in walking order; `visits` as Room::visits() gives them.
[[nodiscard]] std::vector<Visit> narrowed(std::vector<Visit> visits, const DueFilter& filter,
                                          CivilDay today);

}  // namespace burrow
