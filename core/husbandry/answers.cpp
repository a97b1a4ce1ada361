#include "husbandry/answers.h"

#include <algorithm>
#include <array>

namespace burrow {
namespace {

constexpr std::array parts{&leftoversPart, &lookPart,       &feedPart,      &waterPart,
                           &dampPart,      &moultCheckPart, &headcountPart, &measurePart,
                           &breedingPart,  &rehousePart,    &quarantinePart};
static_assert(parts.size() == allCare.size());

Priority usualPriority(const Verdict& verdict) {
    switch (verdict.care) {
        case Care::leftovers:
        case Care::look: return Priority::high;
        case Care::feed:
        case Care::water:
        case Care::moultCheck:
        case Care::breeding:
        case Care::rehouse: return Priority::usual;
        case Care::damp:
        case Care::headcount:
        case Care::measure:
        case Care::quarantine: break;
    }
    return Priority::low;
}

/// One step up for what is late, for water in the heat, and for prey with an animal that is soft or
/// about to be: its window is a single day.
Priority priorityOf(const Verdict& verdict, CivilDay today) {
    if (verdict.state != State::due) return Priority::none;
    auto step = static_cast<int>(usualPriority(verdict));
    if (verdict.window && today > verdict.window->late) ++step;
    if (verdict.because == Because::heat) ++step;
    return static_cast<Priority>(std::min(step, static_cast<int>(Priority::urgent)));
}

}  // namespace

PlanContext contextOf(const PlanInput& input, const Rules& rules, const PlanDay& day,
                      const Forecast& forecasts) {
    PlanContext context{input, rules, day, forecasts, judgeStage(input, rules, day.today),
                        {},    {},    {},  {}};
    const ForecastQuestion question{input, context.stage, rules, day.today,
                                    premoultWindow(context.stage, rules)};
    context.moult = forecasts.nextMoult(question);
    context.chance = premoultChance(input, context.moult, rules);
    context.closures = closuresOf(input, context.stage, rules, context.chance.posterior);
    context.closing = closingOn(context.closures, input, day.today);
    context.weather = weatherOf(input, rules, day.today);
    return context;
}

const CarePart& partFor(Care care) { return *parts[static_cast<std::size_t>(care)]; }

Verdict judged(Care care, const PlanContext& context) {
    auto verdict = partFor(care).judge(context);
    if (verdict.priority == Priority::none) {
        verdict.priority = priorityOf(verdict, context.day.today);
    }
    return verdict;
}

int daysSince(CivilDay day, CivilDay today) { return std::max(0, today - day); }

Message sinceMessage(std::string id, int days) {
    if (days == 0) return Message(std::move(id) + ".today");
    return {std::move(id), {{"days", std::int64_t{days}}}};
}

Window windowAfter(CivilDay from, Range<int> gap) {
    return {from + gap.least, from + usual(gap), from + gap.most};
}

Window windowFrom(CivilDay day, Range<int> gap) { return {day, day, day + usual(gap)}; }

Window laterOf(const Window& a, const Window& b) {
    return {std::max(a.opens, b.opens), std::max(a.best, b.best), std::max(a.late, b.late)};
}

CivilDay knownSince(const PlanInput& input, CivilDay today) {
    const auto& subject = input.subject;
    auto since = subject.acquired ? subject.acquired : subject.hatched;
    if (!since) since = input.digest.firstEntry;
    return std::min(today, since.value_or(today));
}

Verdict inWindow(Care care, Because because, const Window& window, CivilDay today) {
    Verdict verdict;
    verdict.care = care;
    verdict.because = because;
    verdict.state = today >= window.opens ? State::due : State::waiting;
    verdict.window = window;
    return verdict;
}

Verdict nothingToDo(Care care, Because because) {
    Verdict verdict;
    verdict.care = care;
    verdict.because = because;
    return verdict;
}

std::optional<Closing> handsOff(const PlanContext& c) {
    const auto today = c.day.today;
    if (c.closing) return c.closing;
    if (c.input.isSeveral()) {
        const auto phase = c.closures.phaseOn(today);
        if (phase == Phase::hardening) {
            return Closing{Because::memberSoft, *c.input.digest.lastMoult(),
                           c.closures.endOf(phase)};
        }
        if (phase == Phase::premoult) {
            return Closing{Because::memberPremoult, *c.input.digest.premoultSign,
                           c.closures.endOf(phase)};
        }
        if (c.closures.eggSac && today < *c.closures.eggSac) {
            return Closing{Because::eggSac, *c.input.digest.sacLaid, *c.closures.eggSac};
        }
    }
    // It may be over tomorrow: nobody knows the weather.
    if (c.weather == Weather::hot) return Closing{Because::heat, c.input.warmth->day, today + 1};
    if (c.weather == Weather::tooCold) {
        return Closing{Because::tooCold, c.input.warmth->day, today + 1};
    }
    return std::nullopt;
}

Verdict heldBack(Verdict verdict, const std::optional<Closing>& closing) {
    if (!closing || !verdict.window) return verdict;
    auto& window = *verdict.window;
    window = laterOf(window, {closing->opens, closing->opens, closing->opens});
    if (verdict.state != State::due) return verdict;
    verdict.state = State::hold;
    verdict.because = closing->because;
    verdict.since = closing->since;
    return verdict;
}

Message holdMessage(const Verdict& verdict) {
    Message message("hold." + std::string(name(verdict.because)));
    if (verdict.since) message.arguments.push_back({"since", *verdict.since});
    if (verdict.window) message.arguments.push_back({"opens", verdict.window->opens});
    return message;
}

}  // namespace burrow
