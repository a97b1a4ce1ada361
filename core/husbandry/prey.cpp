#include "husbandry/prey.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "base/text.h"

namespace burrow {
namespace {

bool endsWith(std::string_view text, std::string_view end) { return text.ends_with(end); }

/// "fruit_flies", "roaches" and "crickets" without their plural.
std::vector<std::string> singulars(const std::string& term) {
    std::vector<std::string> all{term};
    if (endsWith(term, "s")) all.push_back(term.substr(0, term.size() - 1));
    if (endsWith(term, "es")) all.push_back(term.substr(0, term.size() - 2));
    if (endsWith(term, "ies")) all.push_back(term.substr(0, term.size() - 3) + "y");
    return all;
}

std::optional<Millimetres> longest(const std::string& kind, const Rules& rules) {
    const auto id = "prey.longest." + kind;
    if (rules.find(id) == nullptr) return std::nullopt;
    return rules.length(id);
}

std::string usualKind(const StageJudgement& stage, const Rules& rules) {
    if (stage.smallest) return rules.prey("prey.kind.smallest");
    return rules.prey(ruleFor("prey.kind", stage.stage));
}

/// Prey that was offered when a moult was thought near, but none came.
bool isAfterFalsePremoult(const PlanInput& input, const Closures& closures, CivilDay today) {
    const auto& digest = input.digest;
    if (input.isSeveral() || !closures.premoult || today < *closures.premoult) return false;
    return !digest.lastAccepted || digest.lastAccepted->day < *digest.premoultSign;
}

/// How many times the prey is to be made smaller.
int smallerSteps(const PlanInput& input, const Rules& rules) {
    return std::max(0, input.digest.refusalsInARow - rules.count("prey.smaller.from") + 1);
}

Millimetres makeSmaller(Millimetres length, int steps, const PlanInput& input, const Rules& rules) {
    const double factor = rules.factor("prey.smaller.factor");
    const int most = rules.count("prey.smaller.most");
    auto smaller = length * std::pow(factor, std::min(steps, most));
    const auto& offer = input.digest.lastOffer;
    const bool wasRefused = offer && offer->outcome == Outcome::refused && offer->preyLength;
    if (wasRefused && steps <= most) smaller = std::min(smaller, *offer->preyLength * factor);
    return smaller;
}

void takeLength(PreySuggestion& prey, const PlanInput& input, const StageJudgement& stage,
                const Rules& rules) {
    if (stage.span) {
        prey.length = *stage.span * rules.factor(ruleFor("prey.fraction", stage.stage));
        prey.reason = {"prey.why.size", {{"size", std::round(stage.span->value)}}};
    } else {
        prey.length = rules.length(ruleFor("prey.length", stage.stage));
        prey.reason = {"prey.why.stage", {{"stage", std::string(name(stage.stage))}}};
    }
    if (const int steps = smallerSteps(input, rules); steps > 0) {
        prey.length = makeSmaller(prey.length, steps, input, rules);
        prey.reason = {"prey.why.smaller", {{"times", std::int64_t{input.digest.refusalsInARow}}}};
    }
}

void takeKind(PreySuggestion& prey, const PlanInput& input, const StageJudgement& stage,
              const Rules& rules) {
    const auto usual = usualKind(stage, rules);
    const auto& accepted = input.digest.lastAccepted;
    const bool hasHabit = accepted && !accepted->prey.empty();
    prey.kind = hasHabit ? feederTerm(accepted->prey, rules) : usual;
    if (const auto most = longest(prey.kind, rules); most && prey.length > *most) prey.kind = usual;
    if (const auto most = longest(prey.kind, rules)) prey.length = std::min(prey.length, *most);
}

void takeCount(PreySuggestion& prey, const PlanInput& input, const StageJudgement& stage,
               const Rules& rules) {
    const int each = rules.count(ruleFor("prey.count", stage.stage));
    const int heads = std::max(1, input.subject.headcount);
    switch (input.subject.form) {
        case Form::animal: prey.count = each; break;
        case Form::lot: prey.count = each * heads; break;
        case Form::group: {
            const double share = rules.factor("prey.group_share") * heads * each;
            prey.count = std::max(1, static_cast<int>(std::lround(share)));
            break;
        }
    }
}

}  // namespace

Message PreySuggestion::amount() const {
    const std::int64_t number{count};
    switch (serving) {
        case Serving::whole:
            return {"amount.prey", {{"count", number}, {"prey", kind}, {"length", length.value}}};
        case Serving::killed:
            return {"amount.killed", {{"count", number}, {"prey", kind}, {"length", length.value}}};
        case Serving::pieces: break;
    }
    return {
        "amount.pieces",
        {{"pieces", number}, {"count", std::int64_t{1}}, {"prey", kind}, {"length", length.value}}};
}

PreySuggestion suggestPrey(const PlanInput& input, const StageJudgement& stage,
                           const Closures& closures, const Rules& rules, CivilDay today) {
    PreySuggestion prey;
    takeLength(prey, input, stage, rules);
    if (isAfterFalsePremoult(input, closures, today)) {
        prey.length = prey.length * rules.factor("prey.smaller.factor");
        prey.serving = Serving::killed;
        prey.reason = {"prey.why.cautious"};
    } else if (input.isSeveral() && closures.phaseOn(today) != Phase::between) {
        prey.serving = Serving::killed;
        prey.reason = {"prey.why.soft"};
    }
    takeKind(prey, input, stage, rules);
    prey.length = soldLength(prey.length);
    const bool isTiny = stage.span && *stage.span < rules.length("prey.pieces.below");
    if (isTiny || prey.length < Millimetres{1}) {
        prey.length = std::max(prey.length, Millimetres{1});
        prey.kind = rules.prey("prey.kind.pieces");
        prey.serving = Serving::pieces;
        prey.reason = {"prey.why.pieces"};
    }
    takeCount(prey, input, stage, rules);
    return prey;
}

Millimetres usualLength(const StageJudgement& stage, const Rules& rules) {
    auto length = stage.span ? *stage.span * rules.factor(ruleFor("prey.fraction", stage.stage))
                             : rules.length(ruleFor("prey.length", stage.stage));
    if (const auto most = longest(usualKind(stage, rules), rules)) length = std::min(length, *most);
    return soldLength(length);
}

Millimetres soldLength(Millimetres length) {
    const double mm = length.value;
    const double step = mm < 10 ? 1 : mm < 20 ? 2 : 5;
    return {std::floor(mm / step) * step};
}

std::string feederTerm(const std::string& typed, const Rules& rules) {
    auto word = std::string(trimmed(typed));
    if (word.empty()) return "unnamed";
    for (const auto& term : singulars(normalTerm(word))) {
        if (longest(term, rules)) return term;
    }
    return word;
}

}  // namespace burrow
