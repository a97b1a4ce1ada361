// How many tubs of a shelf or a room ask for what.
#pragma once

#include "viewmodels/desk.h"

namespace burrow {

struct DueTally {
    int feed = 0;
    int look = 0;
    int held = 0;
    int other = 0;

    /// Counts a visit by what it is listed for first.
    void add(Care main, bool isHeld);
    /// "11 to feed, 1 to look at, 4 on hold", without those that are none.
    [[nodiscard]] QString text(const Desk& desk) const;
};

}  // namespace burrow
