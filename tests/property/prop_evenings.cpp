// Whom to feed on which evening. That there are never fewer visits than needed is held against an integer
// program in prop_visits; here the plan is joined with the planner.
#include "room/evenings.h"

#include <map>

#include "support/looking_ahead.h"

using namespace burrow;
using namespace burrow::test;

namespace {

constexpr int ahead = 14;

visits::FeedingDays anyDays() {
    visits::FeedingDays days;
    for (auto& day : days.weekdays) day = *rc::gen::inRange(0, 3) == 0;
    days.weekdays[*rc::gen::inRange<std::size_t>(0, 7)] = true;
    if (*rc::gen::inRange(0, 3) == 0) days.most = *rc::gen::inRange(1, 6);
    return days;
}

/// Everyone's meals by day, on feeding days or not.
std::map<SubjectId, std::map<CivilDay, bool>> mealsOf(const EveningPlan& plan) {
    std::map<SubjectId, std::map<CivilDay, bool>> meals;
    const auto add = [&](const EveningMeal& meal, CivilDay day, bool isOnFeedingDay) {
        const bool isNew =
            meals[meal.resident->subject().id].try_emplace(day, isOnFeedingDay).second;
        RC_ASSERT(isNew);
    };
    for (const auto& evening : plan.evenings) {
        for (const auto& meal : evening.meals) add(meal, evening.day, true);
    }
    for (const auto& each : plan.apart) add(each.meal, each.day, false);
    return meals;
}

void everyoneIsFedInTime() {
    AheadBook at;
    at.fillAtRandom();
    const auto days = anyDays();
    const auto room = at.room();
    const auto plan = planEvenings(room, days, ahead, plainForecast()).value();
    std::optional<CivilDay> last;
    for (const auto& evening : plan.evenings) {
        RC_ASSERT(evening.day >= at.today() && evening.day < at.today() + ahead);
        RC_ASSERT(days.weekdays[static_cast<std::size_t>(weekday(evening.day))]);
        RC_ASSERT(!last || *last < evening.day);
        last = evening.day;
        RC_ASSERT(!evening.meals.empty());
        if (days.most) RC_ASSERT(evening.meals.size() <= static_cast<std::size_t>(*days.most));
        std::vector<ResidentPtr> walked;
        for (const auto& meal : evening.meals) walked.push_back(meal.resident);
        const auto order = walkOf(walked);
        RC_ASSERT(std::is_sorted(order.begin(), order.end()));
    }
    if (!days.most) {
        RC_ASSERT(plan.witnesses.size() == static_cast<std::size_t>(plan.nextVisits));
    }
    RC_ASSERT(isSpoken(plan.why, at.today()));
    for (const auto& each : plan.apart) RC_ASSERT(isSpoken(each.why, at.today()));
    // Nobody is fed before the window opens, and nobody on a feeding day after it closed, unless it was
    // late already.
    const auto meals = mealsOf(plan);
    for (const auto& resident : caredFor(room)) {
        RunAhead run(resident, room, plainForecast());
        auto verdict = run.on(at.today()).of(Care::feed);
        const auto found = meals.find(resident->subject().id);
        if (found == meals.end()) continue;
        for (const auto& [day, isOnFeedingDay] : found->second) {
            RC_ASSERT(verdict.window && verdict.state != State::none);
            RC_ASSERT(day >= verdict.window->opens);
            const bool wasLate = verdict.window->late < at.today();
            if (isOnFeedingDay && !days.most) RC_ASSERT(wasLate || day <= verdict.window->late);
            run.perform(Care::feed, day);
            verdict = run.on(day).of(Care::feed);
        }
    }
}

void settingsReadBack() {
    AheadBook at;
    auto days = anyDays();
    at.set(eveningFields(days));
    const auto read = feedingDaysOf(at.room().info());
    RC_ASSERT(read.weekdays == days.weekdays && read.most == days.most);
}

void checkSettings(Checks& checks) {
    AheadBook at;
    auto days = feedingDaysOf(at.room().info());
    checks.that(std::count(days.weekdays.begin(), days.weekdays.end(), true) == 7 && !days.most,
                "every day and no limit, as long as nobody chose");
    at.set({{setting::eveningDays, "Friday, tue"}, {setting::eveningMost, "25"}});
    days = feedingDaysOf(at.room().info());
    checks.that(days.weekdays == std::array{false, false, true, false, false, true, false},
                "Tuesday and Friday");
    checks.that(days.most == 25, "at most 25");
    at.set({{setting::eveningDays, "someday"}, {setting::eveningMost, "0"}});
    days = feedingDaysOf(at.room().info());
    checks.that(std::count(days.weekdays.begin(), days.weekdays.end(), true) == 7 && !days.most,
                "what can't be read counts as not set");
    checks.that(!readWeekdays("tue, frog"), "a frog is no day");
}

/// Two that were fed 12 and 5 days ago, on 8 May 2026, a Friday.
void checkByHand(Checks& checks) {
    AheadBook at;
    // Adults eat every 10 to 14 days.
    const auto late = at.tub("214", "Brachypelma hamorii", "A / 1", 140);
    const auto fresh = at.tub("118", "Brachypelma boehmei", "A / 2", 140);
    at.ate(late, -12, 1, 20);
    at.ate(fresh, -5, 1, 20);
    visits::FeedingDays fridays;
    fridays.weekdays[5] = true;
    const auto plan = planEvenings(at.room(), fridays, 14, plainForecast()).value();
    checks.that(plan.evenings.size() == 2, "two Fridays in two weeks");
    checks.that(plan.evenings[0].day == at.today() && plan.evenings[0].meals.size() == 1 &&
                    plan.evenings[0].meals[0].resident->subject().id == late,
                "the late one today");
    checks.that(plan.evenings[1].meals.size() == 1 &&
                    plan.evenings[1].meals[0].resident->subject().id == fresh,
                "the other in a week");
    checks.that(plan.nextVisits == 2 && plan.witnesses.size() == 2, "they can't share an evening");
}

}  // namespace

int main() {
    Checks checks;
    checkSettings(checks);
    checkByHand(checks);
    bool ok = checks.ok(9);
    setenv("RC_PARAMS", "max_success=60", 0);
    ok &= rc::check("feeding days read back", settingsReadBack);
    ok &= rc::check("everyone is fed in time", everyoneIsFedInTime);
    return ok ? 0 : 1;
}
