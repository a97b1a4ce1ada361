// When a home is outgrown.
#include "husbandry/home.h"

#include <algorithm>
#include <cmath>

#include "husbandry/answers.h"

namespace burrow {

HomeNeed homeNeed(Millimetres span, const Rules& rules) {
    return {span * rules.factor("home.floor_spans"), span * rules.factor("home.width_spans"),
            span * rules.factor("home.height_spans"), span * rules.factor("home.ground_spans")};
}

HomeFit fitOf(const HomeSize& home, const HomeNeed& need) {
    const auto floor = std::max(home.length, home.width);
    const bool hasHeight = home.height.value > 0;
    if (floor.value <= 0 && !hasHeight) return HomeFit::unknown;
    const auto width = std::min(home.length, home.width);
    const bool isShort = floor.value > 0 && floor < need.floor;
    const bool isNarrow = width.value > 0 && width < need.width;
    const bool isLow = hasHeight && home.height < need.height + need.ground;
    return isShort || isNarrow || isLow ? HomeFit::tooSmall : HomeFit::fits;
}

namespace {

std::optional<SpanForecast> nextSpan(const PlanContext& c) {
    return c.forecasts.spanAfterMoult(
        {c.input, c.stage, c.rules, c.day.today, premoultWindow(c.stage, c.rules)});
}

Verdict dueSince(const PlanContext& c, Because because, CivilDay opens, CivilDay late) {
    const auto best = opens + (late - opens) / 2;
    auto verdict = inWindow(Care::rehouse, because, {opens, best, late}, c.day.today);
    verdict.since = opens;
    return verdict;
}

/// The move is best done well before the moult that makes the home too small.
Verdict beforeNextMoult(const PlanContext& c) {
    const auto next = c.moult ? nextSpan(c) : std::nullopt;
    const bool isOutgrown =
        next && fitOf(*c.input.home, homeNeed(next->afterNextMoult, c.rules)) == HomeFit::tooSmall;
    if (!isOutgrown) return nothingToDo(Care::rehouse, Because::fits);
    const auto late = c.moult->lookFrom;
    return dueSince(c, Because::outgrowsNext, late - c.rules.days("home.ahead"), late);
}

Verdict judgeFit(const PlanContext& c) {
    if (!c.input.home) return nothingToDo(Care::rehouse, Because::homeUnknown);
    if (fitOf(*c.input.home, homeNeed({1}, c.rules)) == HomeFit::unknown) {
        return nothingToDo(Care::rehouse, Because::homeUnknown);
    }
    if (!c.stage.span) return nothingToDo(Care::rehouse, Because::sizeUnknown);
    if (fitOf(*c.input.home, homeNeed(*c.stage.span, c.rules)) == HomeFit::fits) {
        return beforeNextMoult(c);
    }
    const auto& digest = c.input.digest;
    const auto known = std::max(digest.sizedOn, digest.lastRehoused);
    const auto opens = std::min(c.day.today, known.value_or(knownSince(c.input, c.day.today)));
    return dueSince(c, Because::outgrown, opens, opens + c.rules.days("home.ahead"));
}

Verdict judgeRehouse(const PlanContext& c) { return heldBack(judgeFit(c), handsOff(c)); }

/// What the next home must have, for the size after the next moult where that is known.
Message amountFor(const PlanContext& c) {
    const auto next = nextSpan(c);
    const auto span = next ? next->afterNextMoult : *c.stage.span;
    const auto need = homeNeed(span, c.rules);
    const bool climbs =
        c.input.profile != nullptr && c.input.profile->habit.value == Habit::arboreal;
    return {climbs ? "amount.homeHigh" : "amount.home",
            {{"floor", std::ceil(need.floor.value)}, {"height", std::ceil(need.height.value)}}};
}

void sayRehouse(const PlanContext& c, Answer& answer) {
    if (answer.state == State::hold) {
        answer.reason = holdMessage(answer);
    } else {
        std::string id = "reason.rehouse." + std::string(name(answer.because));
        if (answer.state != State::none) id += answer.state == State::due ? ".due" : ".wait";
        answer.reason = Message(id);
    }
    auto& arguments = answer.reason.arguments;
    if (c.stage.span) arguments.push_back({"size", std::round(c.stage.span->value)});
    if (c.moult) arguments.push_back({"median", c.moult->median});
    if (answer.state == State::none) return;
    if (answer.state != State::hold) arguments.push_back({"opens", answer.window->opens});
    answer.amount = amountFor(c);
}

}  // namespace

const CarePart rehousePart{judgeRehouse, sayRehouse};

}  // namespace burrow
