// Leftovers, looking in on those who were forgotten, water and damp.
#include <algorithm>

#include "husbandry/answers.h"
#include "husbandry/prey.h"

namespace burrow {
namespace {

// --- leftovers -----------------------------------------------------------------------------------

/// The offer whose leftovers may be in there.
Meal leftoversOf(const Digest& digest, CivilDay offered) {
    for (const auto& meal : digest.recentOffers) {
        if (meal.day == offered && meal.outcome != Outcome::ate) return meal;
    }
    return digest.lastOffer.value_or(Meal{offered, {}, std::nullopt, 1, Outcome::leftIn});
}

bool isWithSac(const PlanContext& c) {
    return c.closures.eggSac && c.day.today < *c.closures.eggSac;
}

Verdict judgeLeftovers(const PlanContext& c) {
    const auto& digest = c.input.digest;
    if (!digest.leftoversSince) {
        return nothingToDo(Care::leftovers,
                           digest.lastOffer ? Because::nothingLeft : Because::neverOffered);
    }
    const auto since = *digest.leftoversSince;
    constexpr std::int64_t msPerHour = 3'600'000;
    const auto offered = c.day.zone.dayOf(since);
    const auto late = c.day.zone.dayOf({since.ms + c.rules.hours("leftovers.within") * msPerHour});
    // Prey must not stay with an animal that is soft or about to be, nor with an egg sac.
    const bool isUrgent = c.closures.phaseOn(c.day.today) != Phase::between || isWithSac(c);
    const auto opens = isUrgent ? offered : std::min(offered + 1, late);
    auto verdict =
        inWindow(Care::leftovers, Because::leftovers,
                 isUrgent ? Window{opens, opens, opens} : Window{opens, opens, late}, c.day.today);
    verdict.since = offered;
    if (isUrgent && verdict.state == State::due) verdict.priority = Priority::urgent;
    return verdict;
}

void sayLeftovers(const PlanContext& c, Answer& answer) {
    if (answer.state == State::none) {
        answer.reason =
            Message(answer.because == Because::nothingLeft ? "reason.leftovers.none"
                                                           : "reason.leftovers.neverOffered");
        return;
    }
    const auto meal = leftoversOf(c.input.digest, *answer.since);
    const bool isDue = answer.state == State::due;
    const bool isForSac = isWithSac(c) && c.closures.phaseOn(c.day.today) == Phase::between;
    answer.reason = sinceMessage(isDue ? isForSac ? "reason.leftovers.sac" : "reason.leftovers.due"
                                       : "reason.leftovers.wait",
                                 daysSince(*answer.since, c.day.today));
    answer.reason.arguments.push_back({"left", std::string(name(meal.outcome))});
    answer.reason.arguments.push_back({"prey", feederTerm(meal.prey, c.rules)});
    answer.reason.arguments.push_back({"count", std::int64_t{std::max(1, meal.count)}});
    answer.reason.arguments.push_back({"opens", answer.window->opens});
}

// --- looking in ----------------------------------------------------------------------------------

Verdict judgeLook(const PlanContext& c) {
    const auto today = c.day.today;
    const int silent = c.rules.days(ruleFor("look.silent", c.stage.growing()));
    const auto& last = c.input.digest.lastEntry;
    const auto opens = last.value_or(knownSince(c.input, today)) + silent;
    auto verdict =
        inWindow(Care::look, last ? Because::silent : Because::never, {opens, opens, opens}, today);
    verdict.since = last;
    return verdict;
}

void sayLook(const PlanContext& c, Answer& answer) {
    const bool isDue = answer.state == State::due;
    if (!answer.since) {
        answer.reason = Message(isDue ? "reason.look.never" : "reason.look.neverWait");
    } else {
        answer.reason = sinceMessage(isDue ? "reason.look.due" : "reason.look.wait",
                                     daysSince(*answer.since, c.day.today));
    }
    answer.reason.arguments.push_back({"opens", answer.window->opens});
}

// --- water and damp ------------------------------------------------------------------------------

/// In the heat sooner, and never more than what is usual.
Range<int> gapInWeather(const PlanContext& c, Range<int> gap, std::string_view heatRule) {
    if (c.weather != Weather::hot) return gap;
    return scaled(gap, std::min(1.0, c.rules.factor(heatRule)));
}

Range<int> waterGapOf(const PlanContext& c) {
    return gapInWeather(c, waterGap(c.stage, c.rules), "water.heat");
}

Range<int> dampGapOf(const PlanContext& c) {
    return gapInWeather(c, dampGap(c.stage, c.input.profile, c.rules), "damp.heat");
}

/// Care that comes round after a gap of days, whatever the animal does.
Verdict judgeRepeating(const PlanContext& c, Care care, std::optional<CivilDay> last,
                       Range<int> gap) {
    const auto today = c.day.today;
    if (!last) {
        const auto since = knownSince(c.input, today);
        auto verdict = inWindow(care, Because::never, {since, since, since + usual(gap)}, today);
        verdict.since = since;
        return verdict;
    }
    auto verdict = inWindow(care, c.weather == Weather::hot ? Because::heat : Because::lastDone,
                            windowAfter(*last, gap), today);
    verdict.since = last;
    return verdict;
}

void sayRepeating(const PlanContext& c, Answer& answer, Range<int> gap) {
    const std::string id = "reason." + std::string(name(answer.care));
    if (answer.because == Because::never) {
        answer.reason = {id + ".never", {{"since", *answer.since}}};
        return;
    }
    const std::string weather = answer.because == Because::heat ? ".heat" : "";
    answer.reason = sinceMessage(id + weather + (answer.state == State::due ? ".due" : ".wait"),
                                 daysSince(*answer.since, c.day.today));
    answer.reason.arguments.push_back({"gap", std::int64_t{usual(gap)}});
    answer.reason.arguments.push_back({"opens", answer.window->opens});
}

Verdict judgeWater(const PlanContext& c) {
    return judgeRepeating(c, Care::water, c.input.digest.lastWatered, waterGapOf(c));
}

void sayWater(const PlanContext& c, Answer& answer) {
    sayRepeating(c, answer, waterGapOf(c));
    answer.amount = Message(c.stage.stage == Stage::sling ? "amount.drip" : "amount.dish");
}

Verdict judgeDamp(const PlanContext& c) {
    return judgeRepeating(c, Care::damp, c.input.digest.lastDampened, dampGapOf(c));
}

void sayDamp(const PlanContext& c, Answer& answer) {
    sayRepeating(c, answer, dampGapOf(c));
    const auto* profile = c.input.profile;
    const bool isSwamp = profile != nullptr && profile->damp.value == Damp::swamp;
    answer.amount = Message(isSwamp ? "amount.swamp" : "amount.corner");
}

}  // namespace

const CarePart leftoversPart{judgeLeftovers, sayLeftovers};
const CarePart lookPart{judgeLook, sayLook};
const CarePart waterPart{judgeWater, sayWater};
const CarePart dampPart{judgeDamp, sayDamp};

}  // namespace burrow
