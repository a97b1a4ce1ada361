#include "visits/evenings.h"

#include <algorithm>
#include <cstdlib>
#include <map>
#include <numeric>
#include <queue>
#include <utility>

namespace burrow::visits {
namespace {

/// How many more windows fit into each run of slots. All fit as long as no run is overfull (Hall).
class Runs {
public:
    Runs(std::size_t slots, int most) : slots_(static_cast<int>(slots)), left_(slots * slots) {
        for (int from = 0; from < slots_; ++from) {
            for (int to = from; to < slots_; ++to) at(from, to) = (to - from + 1) * most;
        }
    }

    /// How many windows of these slots can be added.
    [[nodiscard]] int room(int first, int last) const {
        int least = left_[index(first, last)];
        for (int from = first; from >= 0; --from) {
            for (int to = last; to < slots_; ++to) least = std::min(least, left_[index(from, to)]);
        }
        return least;
    }
    void add(int first, int last, int count) {
        for (int from = first; from >= 0; --from) {
            for (int to = last; to < slots_; ++to) at(from, to) -= count;
        }
    }
    /// Whether a window of these slots can be narrowed to one of them: only runs that hold that slot
    /// without holding the window get fuller.
    [[nodiscard]] bool canNarrow(int first, int last, int slot) const {
        for (int from = 0; from <= slot; ++from) {
            for (int to = slot; to < slots_; ++to) {
                const bool holdsWindow = from <= first && last <= to;
                if (!holdsWindow && left_[index(from, to)] < 1) return false;
            }
        }
        return true;
    }
    void narrow(int first, int last, int slot) {
        for (int from = 0; from <= slot; ++from) {
            for (int to = slot; to < slots_; ++to) {
                if (!(from <= first && last <= to)) --at(from, to);
            }
        }
    }

private:
    [[nodiscard]] std::size_t index(int from, int to) const {
        return static_cast<std::size_t>(from) * static_cast<std::size_t>(slots_) +
               static_cast<std::size_t>(to);
    }
    int& at(int from, int to) { return left_[index(from, to)]; }

    int slots_;
    std::vector<int> left_;
};

/// Whether all windows can be met together: the windows within each run of slots, counted at once.
bool canAllBeMet(std::span<const SlotWindow> windows, std::size_t slots, int most) {
    std::vector<std::vector<int>> endsOf(slots);
    for (const auto& window : windows) {
        endsOf[static_cast<std::size_t>(window.first)].push_back(window.last);
    }
    std::vector<int> within(slots, 0);  // windows that open at `from` or later, by their last slot
    for (std::size_t from = slots; from-- > 0;) {
        for (const int last : endsOf[from]) ++within[static_cast<std::size_t>(last)];
        long long count = 0;
        for (std::size_t to = from; to < slots; ++to) {
            count += within[to];
            if (count > static_cast<long long>(to - from + 1) * most) return false;
        }
    }
    return true;
}

/// Positions by priority, then by earlier end, by later opening, and as given.
std::vector<std::size_t> byPriority(std::span<const SlotWindow> windows) {
    std::vector<std::size_t> order(windows.size());
    std::iota(order.begin(), order.end(), 0);
    std::stable_sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) {
        const auto& x = windows[a];
        const auto& y = windows[b];
        if (x.priority != y.priority) return x.priority > y.priority;
        return x.last != y.last ? x.last < y.last : x.first > y.first;
    });
    return order;
}

/// The ends moved forward so that no slot ends more than `most`: of those that end in a slot the ones
/// that open latest keep it.
std::vector<int> thinnedEnds(std::span<const SlotWindow> windows, std::size_t slots, int most) {
    std::vector<std::vector<std::size_t>> endingIn(slots);
    for (std::size_t i = 0; i < windows.size(); ++i) {
        endingIn[static_cast<std::size_t>(windows[i].last)].push_back(i);
    }
    std::vector<int> ends(windows.size());
    std::priority_queue<std::pair<int, std::size_t>> waiting;  // the latest opening on top
    for (std::size_t slot = slots; slot-- > 0;) {
        for (const auto i : endingIn[slot]) waiting.emplace(windows[i].first, i);
        for (int taken = 0; taken < most && !waiting.empty(); ++taken) {
            ends[waiting.top().second] = static_cast<int>(slot);
            waiting.pop();
        }
    }
    return ends;
}

}  // namespace

std::vector<bool> servable(std::span<const SlotWindow> windows, std::size_t slots, int most) {
    std::vector<bool> met(windows.size(), true);
    if (canAllBeMet(windows, slots, most)) return met;
    Runs runs(slots, most);
    const auto order = byPriority(windows);
    // Windows alike stand side by side in the order, and are added at once.
    for (std::size_t begin = 0; begin < order.size();) {
        const auto& window = windows[order[begin]];
        std::size_t end = begin;
        while (end < order.size() && windows[order[end]].priority == window.priority &&
               windows[order[end]].first == window.first &&
               windows[order[end]].last == window.last) {
            ++end;
        }
        const auto fits =
            std::min(static_cast<std::size_t>(runs.room(window.first, window.last)), end - begin);
        if (fits > 0) runs.add(window.first, window.last, static_cast<int>(fits));
        for (std::size_t i = begin + fits; i < end; ++i) met[order[i]] = false;
        begin = end;
    }
    return met;
}

std::vector<int> fewestFullSlots(std::span<const SlotWindow> windows, std::size_t slots, int most) {
    const auto ends = thinnedEnds(windows, slots, most);
    std::vector<std::vector<int>> opening(slots);
    for (std::size_t i = 0; i < windows.size(); ++i) {
        opening[static_cast<std::size_t>(windows[i].first)].push_back(ends[i]);
    }
    std::vector<int> chosen;
    std::priority_queue<int, std::vector<int>, std::greater<>> waiting;  // the earliest end on top
    for (std::size_t slot = 0; slot < slots; ++slot) {
        for (const int end : opening[slot]) waiting.push(end);
        if (waiting.empty() || waiting.top() > static_cast<int>(slot)) continue;
        chosen.push_back(static_cast<int>(slot));
        for (int taken = 0; taken < most && !waiting.empty(); ++taken) waiting.pop();
    }
    return chosen;
}

std::vector<int> assigned(std::span<const SlotWindow> windows, std::span<const int> chosen,
                          std::span<const CivilDay> days, int most) {
    const auto visitAt = [&](int slot) {
        return static_cast<int>(std::lower_bound(chosen.begin(), chosen.end(), slot) -
                                chosen.begin());
    };
    Runs runs(chosen.size(), most);
    std::map<std::pair<int, int>, int> counts;
    for (const auto& window : windows) {
        ++counts[{visitAt(window.first), visitAt(window.last + 1) - 1}];
    }
    for (const auto& [run, count] : counts) runs.add(run.first, run.second, count);
    std::vector<int> slots(windows.size(), -1);
    for (const auto i : byPriority(windows)) {
        const auto& window = windows[i];
        const int first = visitAt(window.first);
        const int last = visitAt(window.last + 1) - 1;
        std::vector<int> wishes;
        for (int visit = first; visit <= last; ++visit) wishes.push_back(visit);
        std::stable_sort(wishes.begin(), wishes.end(), [&](int a, int b) {
            const auto away = [&](int visit) {
                const auto slot = static_cast<std::size_t>(chosen[static_cast<std::size_t>(visit)]);
                return std::abs(days[slot] - window.best);
            };
            return away(a) < away(b);
        });
        for (const int visit : wishes) {
            if (!runs.canNarrow(first, last, visit)) continue;
            runs.narrow(first, last, visit);
            slots[i] = chosen[static_cast<std::size_t>(visit)];
            break;
        }
    }
    return slots;
}

}  // namespace burrow::visits
