#include "visits/cover.h"

#include <algorithm>
#include <cstdint>
#include <cstdlib>
#include <numeric>

namespace burrow::visits {
namespace {

using Cost = std::int64_t;

/// What the windows cost whose best day lies between two neighbouring visits, for every such pair;
/// -1 stands for no visit before, and `slots` for none after. Filled through differences, so that a
/// window costs no more than its own width squared.
class PairCosts {
public:
    PairCosts(std::span<const SlotWindow> windows, std::span<const CivilDay> days)
        : days_(days), slots_(static_cast<int>(days.size())), side_(days.size() + 2) {
        costs_.resize(side_ * side_);
        missed_.resize(side_ * side_);
        alongBefore_.resize(side_ * side_);
        alongAfter_.resize(side_ * side_);
        for (const auto& window : windows) add(window);
        sumUp();
    }

    /// Whether no window is missed when nothing is visited between the two.
    [[nodiscard]] bool isAllowed(int before, int after) const {
        return missed_[at(before, after)] == 0;
    }
    [[nodiscard]] Cost cost(int before, int after) const { return costs_[at(before, after)]; }

private:
    [[nodiscard]] std::size_t at(int before, int after) const {
        return static_cast<std::size_t>(before + 1) * side_ + static_cast<std::size_t>(after + 1);
    }
    [[nodiscard]] Cost away(const SlotWindow& window, int slot) const {
        return std::abs(days_[static_cast<std::size_t>(slot)] - window.best);
    }

    void add(const SlotWindow& window) {
        // The first slot after the best day; slots of the window on both sides of it differ in which
        // of the two visits is near.
        const auto begin = days_.begin();
        const int split =
            static_cast<int>(std::upper_bound(begin, days_.end(), window.best) - begin);
        for (int before = window.first; before < split; ++before) {
            for (int after = split; after <= window.last; ++after) {
                costs_[at(before, after)] += std::min(away(window, before), away(window, after));
            }
            // No visit after within the window: the one before takes it, wherever the next one is.
            alongAfter_[at(before, window.last + 1)] += away(window, before);
        }
        for (int after = split; after <= window.last; ++after) {
            alongBefore_[at(-1, after)] += away(window, after);
            alongBefore_[at(window.first, after)] -= away(window, after);
        }
        // Neither: all visits before it opens times all after it closes.
        missed_[at(-1, window.last + 1)] += 1;
        missed_[at(window.first, window.last + 1)] -= 1;
    }

    void sumUp() {
        for (int before = -1; before <= slots_; ++before) {
            for (int after = -1; after <= slots_; ++after) {
                const auto here = at(before, after);
                if (after > -1) alongAfter_[here] += alongAfter_[at(before, after - 1)];
                if (before > -1) alongBefore_[here] += alongBefore_[at(before - 1, after)];
            }
        }
        for (int before = -1; before <= slots_; ++before) {
            for (int after = -1; after <= slots_; ++after) {
                const auto here = at(before, after);
                if (after > -1) missed_[here] += missed_[at(before, after - 1)];
                costs_[here] += alongAfter_[here] + alongBefore_[here];
            }
        }
        for (int before = 0; before <= slots_; ++before) {
            for (int after = -1; after <= slots_; ++after) {
                missed_[at(before, after)] += missed_[at(before - 1, after)];
            }
        }
    }

    std::span<const CivilDay> days_;
    int slots_;
    std::size_t side_;
    std::vector<Cost> costs_;
    std::vector<Cost> missed_;
    std::vector<Cost> alongBefore_;
    std::vector<Cost> alongAfter_;
};

}  // namespace

std::vector<std::size_t> apart(std::span<const SlotWindow> windows) {
    std::vector<std::size_t> order(windows.size());
    std::iota(order.begin(), order.end(), 0);
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        return windows[a].last < windows[b].last;
    });
    std::vector<std::size_t> chosen;
    int visited = -1;
    for (const auto i : order) {
        if (windows[i].first <= visited) continue;
        visited = windows[i].last;
        chosen.push_back(i);
    }
    return chosen;
}

std::vector<int> fewestSlots(std::span<const SlotWindow> windows, std::span<const CivilDay> days) {
    const PairCosts pairs(windows, days);
    const int slots = static_cast<int>(days.size());
    // A visit costs more than all distances together, so fewest visits come first.
    Cost visit = 1;
    for (const auto& window : windows) {
        visit += std::max(std::abs(days[static_cast<std::size_t>(window.first)] - window.best),
                          std::abs(days[static_cast<std::size_t>(window.last)] - window.best));
    }
    constexpr Cost impossible = INT64_MAX;
    std::vector<Cost> least(days.size() + 1, impossible);
    std::vector<int> from(days.size() + 1, -1);
    for (int after = 0; after <= slots; ++after) {
        for (int before = -1; before < after; ++before) {
            const auto reached = before < 0 ? 0 : least[static_cast<std::size_t>(before)];
            if (reached == impossible || !pairs.isAllowed(before, after)) continue;
            const auto total = reached + pairs.cost(before, after) + (after < slots ? visit : 0);
            if (total >= least[static_cast<std::size_t>(after)]) continue;
            least[static_cast<std::size_t>(after)] = total;
            from[static_cast<std::size_t>(after)] = before;
        }
    }
    std::vector<int> chosen;
    for (int slot = from[days.size()]; slot >= 0; slot = from[static_cast<std::size_t>(slot)]) {
        chosen.push_back(slot);
    }
    std::reverse(chosen.begin(), chosen.end());
    return chosen;
}

int nearestSlot(const SlotWindow& window, std::span<const int> chosen,
                std::span<const CivilDay> days) {
    const auto away = [&](int slot) {
        return std::abs(days[static_cast<std::size_t>(slot)] - window.best);
    };
    int nearest = -1;
    auto at = std::lower_bound(chosen.begin(), chosen.end(), window.first);
    for (; at != chosen.end() && *at <= window.last; ++at) {
        if (nearest < 0 || away(*at) < away(nearest)) nearest = *at;
    }
    return nearest;
}

}  // namespace burrow::visits
