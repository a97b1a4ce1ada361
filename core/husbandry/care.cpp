// Everything but feeding: leftovers, water, damp, and looking in on those who were forgotten.
#include <algorithm>

#include "husbandry/answers.h"
#include "husbandry/prey.h"

namespace burrow {
namespace {

/// Care that comes round after a gap of days, whatever the animal does.
Answer answerRepeating(const PlanContext& c, Care care, std::optional<CivilDay> last,
                       Range<int> gap) {
    const auto today = c.day.today;
    const std::string id = "reason." + std::string(name(care));
    Answer answer;
    answer.care = care;
    if (!last) {
        const auto since = knownSince(c.input, today);
        answer.state = State::due;
        answer.window = Window{since, since, since + usual(gap)};
        answer.reason = {id + ".never", {{"since", since}}};
        return answer;
    }
    answer.window = windowAfter(*last, gap);
    const bool isDue = today >= answer.window->opens;
    answer.state = isDue ? State::due : State::waiting;
    answer.reason = sinceMessage(id + (isDue ? ".due" : ".wait"), daysSince(*last, today));
    answer.reason.arguments.push_back({"gap", std::int64_t{usual(gap)}});
    answer.reason.arguments.push_back({"opens", answer.window->opens});
    return answer;
}

/// The offer whose leftovers may be in there.
Meal leftoversOf(const Digest& digest, CivilDay offered) {
    for (const auto& meal : digest.recentOffers) {
        if (meal.day == offered && meal.outcome != Outcome::ate) return meal;
    }
    return digest.lastOffer.value_or(Meal{offered, {}, std::nullopt, 1, Outcome::leftIn});
}

}  // namespace

int daysSince(CivilDay day, CivilDay today) { return std::max(0, today - day); }

Message sinceMessage(std::string id, int days) {
    if (days == 0) return {std::move(id) + ".today"};
    return {std::move(id), {{"days", std::int64_t{days}}}};
}

Window windowAfter(CivilDay from, Range<int> gap) {
    return {from + gap.least, from + usual(gap), from + gap.most};
}

CivilDay knownSince(const PlanInput& input, CivilDay today) {
    const auto& subject = input.subject;
    auto since = subject.acquired ? subject.acquired : subject.hatched;
    if (!since) since = input.digest.firstEntry;
    return std::min(today, since.value_or(today));
}

Answer answerLeftovers(const PlanContext& c) {
    const auto& digest = c.input.digest;
    Answer answer;
    answer.care = Care::leftovers;
    if (!digest.leftoversSince) {
        answer.reason =
            Message(digest.lastOffer ? "reason.leftovers.none" : "reason.leftovers.neverOffered");
        return answer;
    }
    const auto since = *digest.leftoversSince;
    constexpr std::int64_t msPerHour = 3'600'000;
    const auto offered = c.day.zone.dayOf(since);
    const auto late = c.day.zone.dayOf({since.ms + c.rules.hours("leftovers.within") * msPerHour});
    // Prey must not stay with an animal that is soft or about to be.
    const bool isUrgent = c.closures.phaseOn(c.day.today) != Phase::between;
    const auto opens = isUrgent ? offered : std::min(offered + 1, late);
    answer.window = isUrgent ? Window{opens, opens, opens} : Window{opens, opens, late};
    answer.state = c.day.today >= opens ? State::due : State::waiting;
    const auto meal = leftoversOf(digest, offered);
    answer.reason =
        sinceMessage(answer.state == State::due ? "reason.leftovers.due" : "reason.leftovers.wait",
                     daysSince(offered, c.day.today));
    answer.reason.arguments.push_back({"left", std::string(name(meal.outcome))});
    answer.reason.arguments.push_back({"prey", feederTerm(meal.prey, c.rules)});
    answer.reason.arguments.push_back({"count", std::int64_t{std::max(1, meal.count)}});
    answer.reason.arguments.push_back({"opens", opens});
    return answer;
}

Answer answerLook(const PlanContext& c) {
    const auto today = c.day.today;
    const int silent = c.rules.days(ruleFor("look.silent", c.stage.growing()));
    const auto& last = c.input.digest.lastEntry;
    const auto opens = last.value_or(knownSince(c.input, today)) + silent;
    Answer answer;
    answer.care = Care::look;
    answer.window = Window{opens, opens, opens};
    answer.state = today >= opens ? State::due : State::waiting;
    if (!last) {
        const bool isDue = answer.state == State::due;
        answer.reason = {isDue ? "reason.look.never" : "reason.look.neverWait", {{"opens", opens}}};
        return answer;
    }
    answer.reason =
        sinceMessage(answer.state == State::due ? "reason.look.due" : "reason.look.wait",
                     daysSince(*last, today));
    answer.reason.arguments.push_back({"opens", opens});
    return answer;
}

Answer answerWater(const PlanContext& c) {
    auto answer =
        answerRepeating(c, Care::water, c.input.digest.lastWatered, waterGap(c.stage, c.rules));
    const bool drips = c.stage.stage == Stage::sling;
    answer.amount = Message(drips ? "amount.drip" : "amount.dish");
    return answer;
}

Answer answerDamp(const PlanContext& c) {
    const auto* profile = c.input.profile;
    auto answer = answerRepeating(c, Care::damp, c.input.digest.lastDampened,
                                  dampGap(c.stage, profile, c.rules));
    const bool isSwamp = profile != nullptr && profile->damp.value == Damp::swamp;
    answer.amount = Message(isSwamp ? "amount.swamp" : "amount.corner");
    return answer;
}

}  // namespace burrow
