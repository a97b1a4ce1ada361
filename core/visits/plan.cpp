#include "visits/plan.h"

#include <algorithm>
#include <set>

#include "visits/cover.h"
#include "visits/evenings.h"

namespace burrow::visits {
namespace {

std::vector<CivilDay> feedingDays(const FeedingDays& days, CivilDay from, CivilDay to) {
    const std::set<CivilDay> except(days.except.begin(), days.except.end());
    std::vector<CivilDay> all;
    for (auto day = from; day <= to; day = day + 1) {
        const bool isChosen = days.weekdays[static_cast<std::size_t>(weekday(day))];
        if (isChosen && !except.contains(day)) all.push_back(day);
    }
    return all;
}

Done check(std::span<const FeedingWindow> windows, const FeedingDays& days) {
    if (days.most && *days.most < 1) {
        return fail(Trouble::badInput, {"visits.most", {{"most", std::int64_t{*days.most}}}});
    }
    for (const auto& window : windows) {
        if (window.opens > window.best || window.best > window.late) {
            return fail(Trouble::badInput,
                        {"visits.window", {{"opens", window.opens}, {"late", window.late}}});
        }
    }
    return {};
}

/// The part of a window that is still ahead; one that is past lasts until the next feeding day.
FeedingWindow ahead(const FeedingWindow& window, std::span<const CivilDay> days, CivilDay today) {
    auto left = window;
    left.opens = std::max(window.opens, today);
    if (window.late < today) left.late = days.empty() ? today : days.front();
    left.best = std::clamp(window.best, left.opens, left.late);
    return left;
}

Alone standingAlone(const FeedingWindow& window, AloneBecause because, const FeedingDays& days) {
    Alone alone{window.who, window.best, because, {}};
    switch (because) {
        case AloneBecause::noFeedingDay: alone.why.id = "visits.alone.noFeedingDay"; break;
        case AloneBecause::full: alone.why.id = "visits.alone.full"; break;
        case AloneBecause::farAhead: alone.why.id = "visits.alone.farAhead"; break;
    }
    alone.why.arguments = {{"opens", window.opens}, {"late", window.late}, {"day", window.best}};
    if (days.most) alone.why.arguments.push_back({"most", std::int64_t{*days.most}});
    return alone;
}

/// Everyone's windows over the feeding days, and who stands alone from the start.
struct Sorted {
    std::vector<CivilDay> days;
    std::vector<SlotWindow> slots;
    std::vector<FeedingWindow> windows;  ///< of the same positions
    std::vector<Alone> alone;
};

Sorted sortOut(std::span<const FeedingWindow> windows, const FeedingDays& days, CivilDay today) {
    Sorted sorted;
    sorted.days = feedingDays(days, today, today + farthestAhead);
    const auto& all = sorted.days;
    for (const auto& given : windows) {
        const auto window = ahead(given, all, today);
        if (window.opens > today + farthestAhead) {
            sorted.alone.push_back(standingAlone(window, AloneBecause::farAhead, days));
            continue;
        }
        const auto first = std::lower_bound(all.begin(), all.end(), window.opens) - all.begin();
        const auto last = std::upper_bound(all.begin(), all.end(), window.late) - all.begin() - 1;
        if (first > last) {
            sorted.alone.push_back(standingAlone(window, AloneBecause::noFeedingDay, days));
            continue;
        }
        sorted.slots.push_back(
            {static_cast<int>(first), static_cast<int>(last), window.best, window.priority});
        sorted.windows.push_back(window);
    }
    return sorted;
}

/// Takes out those for whom all evenings are full.
void takeOutFull(Sorted& sorted, const FeedingDays& days) {
    const auto met = servable(sorted.slots, sorted.days.size(), *days.most);
    std::size_t kept = 0;
    for (std::size_t i = 0; i < met.size(); ++i) {
        if (!met[i]) {
            sorted.alone.push_back(standingAlone(sorted.windows[i], AloneBecause::full, days));
            continue;
        }
        sorted.slots[kept] = sorted.slots[i];
        sorted.windows[kept] = sorted.windows[i];
        ++kept;
    }
    sorted.slots.resize(kept);
    sorted.windows.resize(kept);
}

/// The slot of everyone with no limit to an evening.
std::vector<int> slotsWithoutLimit(const Sorted& sorted) {
    const auto chosen = fewestSlots(sorted.slots, sorted.days);
    std::vector<int> slots;
    slots.reserve(sorted.slots.size());
    for (const auto& window : sorted.slots) {
        slots.push_back(nearestSlot(window, chosen, sorted.days));
    }
    return slots;
}

bool fits(std::span<const int> slots, std::size_t days, int most) {
    std::vector<int> load(days, 0);
    return std::all_of(slots.begin(), slots.end(),
                       [&](int slot) { return ++load[static_cast<std::size_t>(slot)] <= most; });
}

std::vector<Visit> visitsOf(const Sorted& sorted, std::span<const int> slots) {
    std::vector<std::vector<std::size_t>> who(sorted.days.size());
    for (std::size_t i = 0; i < slots.size(); ++i) {
        who[static_cast<std::size_t>(slots[i])].push_back(sorted.windows[i].who);
    }
    std::vector<Visit> visits;
    for (std::size_t slot = 0; slot < who.size(); ++slot) {
        if (!who[slot].empty()) visits.push_back({sorted.days[slot], std::move(who[slot])});
    }
    return visits;
}

Message reasonFor(const VisitPlan& plan, bool isBound, const FeedingDays& days) {
    const auto count = static_cast<std::int64_t>(plan.visits.size());
    if (count == 0) return {"visits.why.none"};
    Message why{"visits.why.fewest", {{"count", count}}};
    if (isBound) {
        why.id = "visits.why.full";
        why.arguments.push_back({"most", std::int64_t{*days.most}});
    }
    why.arguments.push_back({"whom", std::string(plan.alone.empty() ? "all" : "others")});
    return why;
}

}  // namespace

Result<VisitPlan> planVisits(std::span<const FeedingWindow> windows, const FeedingDays& days,
                             CivilDay today) {
    BURROW_DO(check(windows, days));
    auto sorted = sortOut(windows, days, today);
    if (days.most) takeOutFull(sorted, days);
    auto slots = slotsWithoutLimit(sorted);
    const bool isBound = days.most && !fits(slots, sorted.days.size(), *days.most);
    if (isBound) {
        const auto chosen = fewestFullSlots(sorted.slots, sorted.days.size(), *days.most);
        slots = assigned(sorted.slots, chosen, sorted.days, *days.most);
    }
    VisitPlan plan;
    plan.visits = visitsOf(sorted, slots);
    plan.alone = std::move(sorted.alone);
    for (const auto i : apart(sorted.slots)) plan.apart.push_back(sorted.windows[i].who);
    plan.why = reasonFor(plan, isBound, days);
    return plan;
}

}  // namespace burrow::visits
