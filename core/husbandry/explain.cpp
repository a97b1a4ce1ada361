#include "husbandry/explain.h"

#include <algorithm>
#include <cmath>

#include "husbandry/answers.h"

namespace burrow {
namespace {

std::int64_t percent(double chance) { return std::lround(chance * 100); }

void addRange(Message& message, Range<int> gap) {
    message.arguments.push_back({"least", std::int64_t{gap.least}});
    message.arguments.push_back({"most", std::int64_t{gap.most}});
}

void addFactor(std::vector<Message>& working, const char* id, double factor) {
    if (factor == 1) return;
    working.push_back({id, {{"factor", factor}}});
}

void addGap(std::vector<Message>& working, const PlanContext& c, const Answer& answer) {
    const auto base = mealGap(c.stage, c.rules);
    auto& first = working.emplace_back("work.gap");
    addRange(first, base);
    first.arguments.push_back({"stage", std::string(name(c.stage.stage))});
    const auto factors =
        gapFactors(c.input, c.stage, c.moult, c.chance, c.weather, c.rules, c.day.today);
    addFactor(working, "work.own", factors.own);
    addFactor(working, "work.afterMoult", factors.afterMoult);
    addFactor(working, "work.towardMoult", factors.towardMoult);
    addFactor(working, "work.cold", factors.cold);
    double meal = 1;
    if (c.input.digest.lastAccepted) {
        meal = MealScale(c.input, c.stage, c.rules).of(*c.input.digest.lastAccepted);
        addFactor(working, "work.meal", meal);
    }
    const auto now = scaled(base, factors.product() * meal);
    if (now != base) addRange(working.emplace_back("work.gapNow"), now);
    if (answer.because != Because::refused) return;
    const auto retry = c.rules.dayRange(ruleFor("feed.retry", c.stage.growing()));
    const double factor = retryFactor(c.input.digest.refusalsInARow - 1, c.rules);
    auto& again = working.emplace_back("work.retry");
    addRange(again, scaled(retry, factor));
    again.arguments.push_back({"times", std::int64_t{c.input.digest.refusalsInARow}});
}

void addMoult(std::vector<Message>& working, const PlanContext& c) {
    if (!c.moult) return;
    working.push_back({"work.moult." + std::string(name(c.moult->basis)),
                       {{"median", c.moult->median},
                        {"soonest", c.moult->soonest},
                        {"latest", c.moult->latest},
                        {"intervals", std::int64_t{c.moult->intervals}},
                        {"days", std::int64_t{c.moult->usualInterval}}}});
}

void addChance(std::vector<Message>& working, const PlanContext& c) {
    if (!c.moult) return;
    working.push_back({c.chance.refusals > 0 ? "work.premoultRefused" : "work.premoult",
                       {{"days", std::int64_t{premoultWindow(c.stage, c.rules)}},
                        {"prior", percent(c.chance.prior)},
                        {"percent", percent(c.chance.posterior)},
                        {"times", std::int64_t{c.chance.refusals}}}});
}

void addWeather(std::vector<Message>& working, const PlanContext& c) {
    if (c.weather == Weather::unknown) return;
    working.push_back({"work.weather." + std::string(name(c.weather)),
                       {{"warmth", c.input.warmth->mean.value}, {"day", c.input.warmth->day}}});
}

void addSpan(std::vector<Message>& working, const PlanContext& c) {
    const auto next = c.forecasts.spanAfterMoult(
        {c.input, c.stage, c.rules, c.day.today, premoultWindow(c.stage, c.rules)});
    if (!next) return;
    working.push_back({"work.span." + std::string(name(next->basis)),
                       {{"size", std::round(next->afterNextMoult.value)}}});
}

/// The rule that set the end of what is closed, which was asked for before the answer was.
std::vector<RuleName> closingRules(Because because, Stage growing) {
    switch (because) {
        case Because::hardening:
        case Because::memberSoft: return {ruleFor("hardening", growing)};
        case Because::premoult:
        case Because::memberPremoult: return {ruleFor("premoult.hold", growing)};
        case Because::likelyPremoult:
            return {ruleFor("premoult.recheck", growing),
                    {"premoult", "after_refusals"},
                    {"premoult", "threshold"}};
        case Because::eggSac: return {{"sac", "hold"}};
        case Because::settling: return {ruleFor("settle", growing)};
        case Because::tooCold: return {{"warmth", "stop_below"}};
        case Because::heat: return {{"warmth", "hot_by"}};
        default: return {};
    }
}

bool asksForecast(Care care) {
    return care == Care::feed || care == Care::moultCheck || care == Care::rehouse;
}

}  // namespace

Explanation explain(Care care, const PlanInput& input, const Rules& rules, const PlanDay& day,
                    const Forecast& forecasts) {
    Explanation why;
    const auto plan = planFor(input, rules, day, forecasts);
    why.answer = plan.of(care);
    if (!input.subject.isKept() || why.answer.because == Because::noneLeft) return why;
    why.working.push_back(plan.stage.how);
    if (input.subject.standing != Standing::here) return why;

    const auto own = rules.of(input.ruleSubject());
    RuleTrace trace;
    const auto traced = own.tracedInto(trace);
    const auto c = contextOf(input, own, day, forecasts);
    const PlanContext asking{input,   traced,   day,        forecasts, c.stage,
                             c.moult, c.chance, c.closures, c.closing, c.weather};
    Answer again;
    static_cast<Verdict&>(again) = judged(care, asking);
    partFor(care).say(asking, again);
    for (const auto& id : closingRules(why.answer.because, c.stage.growing())) {
        static_cast<void>(traced.origin(id));
    }
    if (care == Care::feed) addGap(why.working, asking, why.answer);
    if (asksForecast(care)) {
        static_cast<void>(forecasts.nextMoult(
            {input, c.stage, traced, day.today, premoultWindow(c.stage, traced)}));
        addMoult(why.working, asking);
        addChance(why.working, asking);
    }
    if (care == Care::rehouse) addSpan(why.working, asking);
    addWeather(why.working, asking);
    for (const auto at : trace.asked) why.rules.push_back(*own.all()[at]);
    return why;
}

}  // namespace burrow
