// Feeding days and the walk of a visit: what holds for every keeper, and examples by hand.
#include <rapidcheck.h>

#include <algorithm>
#include <chrono>
#include <set>

#include "support/assets.h"
#include "support/checks.h"
#include "visits/plan.h"
#include "visits/walk.h"

using namespace burrow;
using namespace burrow::test;
using namespace burrow::visits;

namespace {

const CivilDay friday = *civilDay({2026, 5, 8});

FeedingDays tuesdaysAndFridays() {
    FeedingDays days;
    days.weekdays[2] = days.weekdays[5] = true;
    return days;
}

void checkPlans(Checks& checks) {
    const auto plan = [](std::vector<FeedingWindow> windows, const FeedingDays& days) {
        return planVisits(windows, days, friday).value();
    };
    const auto days = tuesdaysAndFridays();
    const auto two =
        plan({{1, friday, friday + 1, friday + 3}, {2, friday - 4, friday, friday + 5}}, days);
    checks.that(two.visits == std::vector<Visit>{{friday, {1, 2}}}, "two share the first evening");
    const auto none = plan({{7, friday + 1, friday + 2, friday + 3}}, days);
    checks.that(none.visits.empty() && none.alone.size() == 1, "Saturday to Monday stands alone");
    checks.that(
        none.alone[0].because == AloneBecause::noFeedingDay && none.alone[0].day == friday + 2,
        "and is fed on its best day");
    const auto late = plan({{3, friday - 9, friday - 8, friday - 7}}, days);
    checks.that(late.visits == std::vector<Visit>{{friday, {3}}}, "what is late is fed at once");
    auto closed = days;
    closed.except = {friday};
    const auto later = plan({{3, friday - 9, friday - 8, friday - 7}}, closed);
    checks.that(later.visits == std::vector<Visit>{{friday + 4, {3}}},
                "or on the next feeding day");
    auto one = days;
    one.most = 1;
    const auto full = plan({{1, friday, friday, friday, 0}, {2, friday, friday, friday, 5}}, one);
    checks.that(full.visits == std::vector<Visit>{{friday, {2}}}, "the higher priority is fed");
    checks.that(full.alone.size() == 1 && full.alone[0].because == AloneBecause::full,
                "the other hears that the evening is full");
    const auto far = plan({{1, friday + 400, friday + 400, friday + 401}}, days);
    checks.that(far.alone.size() == 1 && far.alone[0].because == AloneBecause::farAhead,
                "far ahead");
    checks.that(plan({}, FeedingDays{}).visits.empty(), "nothing to plan");
    const std::vector<FeedingWindow> odd{{1, friday, friday - 1, friday}};
    checks.that(!planVisits(odd, days, friday), "a best day outside its window is refused");
    one.most = 0;
    checks.that(!planVisits({}, one, friday), "an evening for nobody is refused");
}

/// Any weekdays, days off and limit, over clock changes and a leap day: a day is a civil day.
bool plansHold() {
    static const auto words = englishWords();
    return rc::check(
        "everyone is fed once, in its window and on a feeding day, or stands alone", [] {
            FeedingDays days;
            for (auto& isChosen : days.weekdays) isChosen = *rc::gen::arbitrary<bool>();
            const CivilDay today = *civilDay({2028, 2, 20}) + *rc::gen::inRange(0, 60);
            for (int i = *rc::gen::inRange(0, 5); i > 0; --i) {
                days.except.push_back(today + *rc::gen::inRange(0, 20));
            }
            if (*rc::gen::arbitrary<bool>()) days.most = *rc::gen::inRange(1, 8);
            std::vector<FeedingWindow> windows;
            const auto count = *rc::gen::inRange<std::size_t>(0, 30);
            for (std::size_t i = 0; i < count; ++i) {
                const auto opens = today + *rc::gen::inRange(-12, 15);
                const auto best = opens + *rc::gen::inRange(0, 6);
                windows.push_back(
                    {i, opens, best, best + *rc::gen::inRange(0, 6), *rc::gen::inRange(0, 4)});
            }
            const auto plan = planVisits(windows, days, today).value();
            std::set<std::size_t> seen;
            for (const auto& visit : plan.visits) {
                RC_ASSERT(visit.day >= today);
                RC_ASSERT(days.weekdays[static_cast<std::size_t>(weekday(visit.day))]);
                RC_ASSERT(std::count(days.except.begin(), days.except.end(), visit.day) == 0);
                RC_ASSERT(!days.most || visit.who.size() <= static_cast<std::size_t>(*days.most));
                for (const auto who : visit.who) {
                    RC_ASSERT(seen.insert(who).second);
                    RC_ASSERT(windows[who].opens <= visit.day);
                    RC_ASSERT(visit.day <= windows[who].late || windows[who].late < today);
                }
            }
            for (const auto& alone : plan.alone) {
                RC_ASSERT(seen.insert(alone.who).second);
                RC_ASSERT(words.say(alone.why, today).find('[') == std::string::npos);
                RC_ASSERT(alone.day >= today);
            }
            RC_ASSERT(seen.size() == count);
            RC_ASSERT(plan.apart.size() <= plan.visits.size());
            RC_ASSERT(days.most || plan.apart.size() == plan.visits.size());
            RC_ASSERT(words.say(plan.why, today).find('[') == std::string::npos);
        });
}

void checkWalk(Checks& checks) {
    const auto stop = [](const char* place, const char* number, bool quarantined = false) {
        return Stop{Place::parse(place), number, quarantined};
    };
    const std::vector<Stop> stops{
        stop("Kiln / A / 1 / 1", "1"),       stop("Kiln / A / 1 / 2", "2"),
        stop("Kiln / A / 2 / 1", "3"),       stop("Kiln / A / 2 / 10", "4"),
        stop("Kiln / B / 1 / 1", "5"),       stop("Kiln / B / 1 / 2", "6"),
        stop("Kiln / B / 2 / 1", "7"),       stop("Kiln / B / 2 / 2", "8"),
        stop("Kiln / A / 1 / 0", "9", true), stop("", "10"),
        stop("Kiln / A / 0 / 0", "11", true)};
    using Order = std::vector<std::size_t>;
    // A from its first shelf, there and back; B from its last shelf; no place; quarantine.
    checks.that(walk(stops) == Order{0, 1, 3, 2, 6, 7, 5, 4, 9, 10, 8},
                "a walk without going back");
    const std::vector<Place> racks{Place::parse("Kiln / B / 0 / 0")};
    checks.that(walk(stops, racks) == Order{4, 5, 7, 6, 2, 3, 1, 0, 9, 10, 8},
                "racks in their order");
    checks.that(walk({}).empty(), "nobody to walk to");
}

bool walksHold() {
    return rc::check("a walk passes everyone once, shelf by shelf, quarantine last", [] {
        std::vector<Stop> stops;
        const auto count = *rc::gen::inRange<std::size_t>(0, 40);
        for (std::size_t i = 0; i < count; ++i) {
            const auto part = [](const char* prefix) {
                return prefix + std::to_string(*rc::gen::inRange(1, 4));
            };
            stops.push_back({{"", part("R"), part("S"), part("")},
                             std::to_string(*rc::gen::inRange(1, 99)),
                             *rc::gen::arbitrary<bool>()});
        }
        const auto order = walk(stops);
        auto sorted = order;
        std::sort(sorted.begin(), sorted.end());
        for (std::size_t i = 0; i < count; ++i) RC_ASSERT(sorted[i] == i);
        std::set<std::string> left;
        std::string here;
        for (const auto i : order) {
            const auto& stop = stops[i];
            const auto shelf = (stop.quarantined ? "q " : "") + stop.place.shelfOnly().text();
            if (shelf != here) RC_ASSERT(left.insert(shelf).second);
            here = shelf;
        }
        const auto isFree = [&](std::size_t i) { return !stops[i].quarantined; };
        RC_ASSERT(std::is_partitioned(order.begin(), order.end(), isFree));
    });
}

/// Twenty thousand subjects with and without a limit that binds.
void checkSpeed(Checks& checks) {
    std::vector<FeedingWindow> windows;
    std::uint64_t state = 7;
    const auto next = [&](std::uint64_t below) {
        state = state * 6364136223846793005U + 1442695040888963407U;
        return static_cast<int>((state >> 33U) % below);
    };
    for (std::size_t i = 0; i < 20'000; ++i) {
        const auto opens = friday + next(28);
        const auto best = opens + next(4);
        windows.push_back({i, opens, best, best + next(5), next(4)});
    }
    FeedingDays days;
    days.weekdays.fill(true);
    for (const auto most :
         {std::optional<int>(), std::optional<int>(900), std::optional<int>(300)}) {
        days.most = most;
        const auto begin = std::chrono::steady_clock::now();
        const auto plan = planVisits(windows, days, friday).value();
        const std::chrono::duration<double, std::milli> took =
            std::chrono::steady_clock::now() - begin;
        std::size_t fed = 0;
        for (const auto& visit : plan.visits) fed += visit.who.size();
        checks.that(fed + plan.alone.size() == windows.size(), "twenty thousand planned");
        std::cout << "20,000 subjects, at most " << most.value_or(0)
                  << " in an evening: " << plan.visits.size() << " visits, " << plan.alone.size()
                  << " alone, " << took.count() << " ms\n";
    }
}

}  // namespace

int main() {
    Checks checks;
    checkPlans(checks);
    checkWalk(checks);
    checkSpeed(checks);
    bool ok = checks.ok(17);
    ok &= plansHold();
    ok &= walksHold();
    return ok ? 0 : 1;
}
