// Fewest points that meet every interval, as pure numbers; not for use outside visits. A slot is the
// position of a feeding day among all feeding days that are looked at.
#pragma once

#include <span>
#include <vector>

#include "base/civil.h"

namespace burrow::visits {

/// The slots `first` to `last` (both included) lie in the window; `best` is the day wished for, and
/// need be no feeding day.
struct SlotWindow {
    int first = 0;
    int last = 0;
    CivilDay best;
    int priority = 0;
};

/// Positions of windows no two of which share a slot, as many as can be: there are never fewer visits
/// than these. By earliest end; O(n log n).
[[nodiscard]] std::vector<std::size_t> apart(std::span<const SlotWindow> windows);

/// The fewest slots that meet every window, and of all such choices one with the fewest days between
/// the windows' best days and the visit nearest to each. In rising order.
///
/// Interval point cover: as many as the windows of `apart()` (greedy by earliest end is optimal,
/// a textbook result; the interval matrix is totally unimodular, so its linear program says the same).
/// Which of the smallest covers is found by dynamic programming over the last slot chosen: between two
/// neighbouring visits each window's nearest visit is one of the two. O(n w^2 + d^2) for windows of up
/// to w slots among d slots.
[[nodiscard]] std::vector<int> fewestSlots(std::span<const SlotWindow> windows,
                                           std::span<const CivilDay> days);

/// The slot among `chosen` (rising, not empty) that lies in the window nearest to its best day, the
/// earlier of two; -1 where none lies in it.
[[nodiscard]] int nearestSlot(const SlotWindow& window, std::span<const int> chosen,
                              std::span<const CivilDay> days);

}  // namespace burrow::visits
