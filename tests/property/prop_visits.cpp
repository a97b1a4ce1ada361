// Fewest visits: against published examples, every choice tried, and an integer program.
#include <rapidcheck.h>

#include <algorithm>
#include <functional>

#include "support/checks.h"
#include "support/glpk.h"
#include "visits/cover.h"
#include "visits/evenings.h"

using namespace burrow;
using namespace burrow::test;
using namespace burrow::visits;

namespace {

using Windows = std::vector<SlotWindow>;

std::vector<CivilDay> everyDay(int count) {
    std::vector<CivilDay> days;
    for (int i = 0; i < count; ++i) days.push_back({i});
    return days;
}

Windows windowsOf(std::initializer_list<std::pair<int, int>> ends) {
    Windows windows;
    for (const auto& [first, last] : ends) windows.push_back({first, last, {last}, 0});
    return windows;
}

Windows anyWindows(int slots, int longest, std::size_t most) {
    Windows windows;
    const auto count = *rc::gen::inRange<std::size_t>(0, most + 1);
    for (std::size_t i = 0; i < count; ++i) {
        const int first = *rc::gen::inRange(0, slots);
        const int last = std::min(slots - 1, first + *rc::gen::inRange(0, longest + 1));
        const int best = *rc::gen::inRange(first, last + 1);
        windows.push_back({first, last, {best}, *rc::gen::inRange(0, 3)});
    }
    return windows;
}

std::vector<int> membersOf(unsigned set, int slots) {
    std::vector<int> members;
    for (int slot = 0; slot < slots; ++slot) {
        if ((set >> static_cast<unsigned>(slot) & 1U) != 0) members.push_back(slot);
    }
    return members;
}

/// Whether a way of meeting all windows exists, by augmenting paths and nothing cleverer.
bool canMeet(const Windows& windows, const std::vector<int>& chosen, int most) {
    std::vector<std::vector<std::size_t>> held(chosen.size());
    const std::function<bool(std::size_t, std::vector<bool>&)> place =
        [&](std::size_t i, std::vector<bool>& seen) {
            for (std::size_t v = 0; v < chosen.size(); ++v) {
                if (seen[v] || chosen[v] < windows[i].first || chosen[v] > windows[i].last)
                    continue;
                seen[v] = true;
                if (held[v].size() < static_cast<std::size_t>(most)) {
                    held[v].push_back(i);
                    return true;
                }
                for (auto& other : held[v]) {
                    if (place(other, seen)) {
                        other = i;
                        return true;
                    }
                }
            }
            return false;
        };
    for (std::size_t i = 0; i < windows.size(); ++i) {
        std::vector<bool> seen(chosen.size(), false);
        if (!place(i, seen)) return false;
    }
    return true;
}

struct Best {
    std::size_t visits = 99;
    int away = 0;
};

/// Fewest visits and least distance of all sets of slots.
Best tryAll(const Windows& windows, int slots, int most) {
    const auto days = everyDay(slots);
    Best best;
    for (unsigned set = 0; set < 1U << static_cast<unsigned>(slots); ++set) {
        const auto chosen = membersOf(set, slots);
        if (chosen.size() > best.visits || !canMeet(windows, chosen, most)) continue;
        int away = 0;
        for (const auto& window : windows) {
            const int slot = nearestSlot(window, chosen, days);
            away += std::abs(slot - window.best.days);
        }
        if (chosen.size() == best.visits && away >= best.away) continue;
        best = {chosen.size(), away};
    }
    return best;
}

int distance(const Windows& windows, const std::vector<int>& chosen, int slots) {
    int away = 0;
    for (const auto& window : windows) {
        away += std::abs(nearestSlot(window, chosen, everyDay(slots)) - window.best.days);
    }
    return away;
}

/// Examples whose optimum a brute force, scipy 1.10.1 milp and glpsol 5.0 agree on; the second is the
/// usual textbook one of interval stabbing.
void checkExamples(Checks& checks) {
    const auto stab = [](const Windows& windows, int slots) {
        return fewestSlots(windows, everyDay(slots));
    };
    using Slots = std::vector<int>;
    checks.that(
        stab(windowsOf({{1, 4}, {2, 6}, {5, 7}, {8, 10}, {9, 12}, {11, 11}}), 13).size() == 4,
        "six windows in four visits");
    checks.that(stab(windowsOf({{0, 10}, {3, 12}, {11, 15}}), 16).size() == 2,
                "the textbook example");
    // 0 and 5 are given; 8 rather than 9, the best day of the last window, as it suits (3, 8) more.
    checks.that(stab(windowsOf({{0, 0}, {0, 5}, {5, 5}, {6, 9}, {3, 8}}), 10) == Slots{0, 5, 8},
                "windows of one day");
    checks.that(stab(windowsOf({{1, 3}, {2, 5}, {3, 6}, {4, 7}, {5, 8}, {6, 9}}), 10).size() == 2,
                "a staircase in two visits");
    checks.that(stab(windowsOf({{4, 4}, {4, 4}, {4, 4}, {4, 4}, {4, 4}}), 5) == Slots{4},
                "five alike in one visit");
    checks.that(stab({}, 5).empty(), "no windows, no visits");
    // At most two a day: three visits, where one would do without the limit (scipy 1.10.1 milp).
    const auto crowded = windowsOf({{1, 4}, {2, 6}, {3, 5}, {4, 4}, {4, 8}});
    checks.that(stab(crowded, 9) == Slots{4}, "five windows share a day");
    checks.that(fewestFullSlots(crowded, 9, 2).size() == 3, "two a day need three visits");
}

bool coverIsFewest() {
    bool ok = rc::check("fewest visits, and the nearest of those, as every set tried", [] {
        constexpr int slots = 11;
        const auto windows = anyWindows(slots, 5, 9);
        const auto chosen = fewestSlots(windows, everyDay(slots));
        const auto best = tryAll(windows, slots, 99);
        RC_ASSERT(chosen.size() == best.visits);
        RC_ASSERT(chosen.size() == apart(windows).size());
        RC_ASSERT(distance(windows, chosen, slots) == best.away);
    });
    ok &= rc::check("as many as the integer program and its relaxation", [] {
        constexpr int slots = 25;
        const auto windows = anyWindows(slots, 8, 40);
        const auto count = static_cast<int>(fewestSlots(windows, everyDay(slots)).size());
        RC_ASSERT(VisitProgram(windows, slots, std::nullopt).fewest().value() == count);
        const double relaxed = VisitProgram(windows, slots, std::nullopt, true).relaxed();
        RC_ASSERT(std::abs(relaxed - count) < 1e-6);
    });
    ok &= rc::check("windows that stand apart share no slot", [] {
        const auto windows = anyWindows(30, 8, 40);
        const auto chosen = apart(windows);
        for (const auto a : chosen) {
            for (const auto b : chosen) {
                if (a == b) continue;
                const bool isApart =
                    windows[a].last < windows[b].first || windows[b].last < windows[a].first;
                RC_ASSERT(isApart);
            }
        }
    });
    return ok;
}

/// The most windows that can be met of each priority, the highest first, by trying all sets.
std::vector<int> mostOfEach(const Windows& windows, int slots, int most) {
    std::vector<int> best(3, -1);
    std::vector<int> all;
    for (int slot = 0; slot < slots; ++slot) all.push_back(slot);
    for (unsigned set = 0; set < 1U << windows.size(); ++set) {
        Windows some;
        std::vector<int> counts(3, 0);
        for (std::size_t i = 0; i < windows.size(); ++i) {
            if ((set >> i & 1U) == 0) continue;
            some.push_back(windows[i]);
            ++counts[static_cast<std::size_t>(2 - windows[i].priority)];
        }
        if (counts > best && canMeet(some, all, most)) best = counts;
    }
    return best;
}

bool fullEveningsAreFewest() {
    bool ok = rc::check("those served are the most of each priority", [] {
        constexpr int slots = 5;
        const auto windows = anyWindows(slots, 3, 9);
        const int most = *rc::gen::inRange(1, 3);
        const auto met = servable(windows, slots, most);
        std::vector<int> counts(3, 0);
        for (std::size_t i = 0; i < windows.size(); ++i) {
            if (met[i]) ++counts[static_cast<std::size_t>(2 - windows[i].priority)];
        }
        RC_ASSERT(counts == mostOfEach(windows, slots, most));
    });
    const auto servableOnly = [](const Windows& windows, int slots, int most) {
        const auto met = servable(windows, static_cast<std::size_t>(slots), most);
        Windows some;
        for (std::size_t i = 0; i < windows.size(); ++i) {
            if (met[i]) some.push_back(windows[i]);
        }
        return some;
    };
    ok &= rc::check("fewest visits with a limit, as every set tried", [=] {
        constexpr int slots = 9;
        const int most = *rc::gen::inRange(1, 4);
        const auto windows = servableOnly(anyWindows(slots, 5, 14), slots, most);
        RC_ASSERT(fewestFullSlots(windows, slots, most).size() ==
                  tryAll(windows, slots, most).visits);
    });
    ok &= rc::check("fewest visits with a limit, as the integer program", [=] {
        constexpr int slots = 12;
        const int most = *rc::gen::inRange(1, 6);
        const auto windows = servableOnly(anyWindows(slots, 6, 30), slots, most);
        const auto chosen = fewestFullSlots(windows, slots, most);
        const auto fewest = VisitProgram(windows, slots, most).fewest();
        RC_ASSERT(fewest.value() == static_cast<int>(chosen.size()));
    });
    ok &= rc::check("everyone gets a visit of its window, and none is overfull", [=] {
        constexpr int slots = 20;
        const int most = *rc::gen::inRange(1, 6);
        const auto windows = servableOnly(anyWindows(slots, 8, 60), slots, most);
        const auto chosen = fewestFullSlots(windows, slots, most);
        const auto taken = assigned(windows, chosen, everyDay(slots), most);
        std::vector<int> load(slots, 0);
        for (std::size_t i = 0; i < windows.size(); ++i) {
            RC_ASSERT(taken[i] >= windows[i].first && taken[i] <= windows[i].last);
            RC_ASSERT(std::count(chosen.begin(), chosen.end(), taken[i]) == 1);
            RC_ASSERT(++load[static_cast<std::size_t>(taken[i])] <= most);
        }
    });
    return ok;
}

}  // namespace

int main() {
    Checks checks;
    checkExamples(checks);
    bool ok = checks.ok(8);
    ok &= coverIsFewest();
    ok &= fullEveningsAreFewest();
    return ok ? 0 : 1;
}
