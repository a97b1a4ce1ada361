// Visits that take no more than so many subjects each, as pure numbers; not for use outside visits.
#pragma once

#include <span>
#include <vector>

#include "visits/cover.h"

namespace burrow::visits {

/// Which windows can be met when a slot takes `most`, for every slot a visit: by priority, the earlier
/// end first, each as long as it leaves all those before it their slot. The sets that can be met are
/// the independent sets of a transversal matroid, so this takes as many as can be, and the most of the
/// highest priority, of the next, and so on (Edmonds & Fulkerson 1965). Whether a set can be met is
/// Hall's condition, which for intervals need only be looked at for runs of slots.
/// O(n log n + d^2) where all can be met, else O(n log n + g d^2) for g different windows.
[[nodiscard]] std::vector<bool> servable(std::span<const SlotWindow> windows, std::size_t slots,
                                         int most);

/// The fewest slots in which all windows are met when a slot takes `most`; all of them must be
/// servable. Lazy activation: ends are moved forward until no slot ends more than `most` windows, then
/// a slot is opened only when a window ends in it, and filled up by earliest end. Optimal for visits of
/// equal size (Chang, Gabow & Khuller 2014, A model for minimizing active processor time,
/// Algorithmica 70:368-405). O(n log n + d).
[[nodiscard]] std::vector<int> fewestFullSlots(std::span<const SlotWindow> windows,
                                               std::size_t slots, int most);

/// The slot of each window among `chosen`, at most `most` in each; there must be a way. One window
/// after another, by priority, takes the visit nearest its best day that leaves all others one.
/// O(n log n + n v^2) for v visits.
[[nodiscard]] std::vector<int> assigned(std::span<const SlotWindow> windows,
                                        std::span<const int> chosen, std::span<const CivilDay> days,
                                        int most);

}  // namespace burrow::visits
