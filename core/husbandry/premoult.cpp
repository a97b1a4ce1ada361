#include "husbandry/premoult.h"

#include <algorithm>
#include <cmath>

namespace burrow {

PremoultChance premoultChance(const PlanInput& input, const std::optional<MoultForecast>& forecast,
                              const Rules& rules) {
    PremoultChance chance;
    chance.refusals = input.isSeveral() ? 0 : input.digest.refusalsInARow;
    if (!forecast) return chance;
    // Never quite certain, so that evidence always counts.
    chance.prior = std::clamp(forecast->soon, 0.0, 0.999);
    const int counted = std::min(chance.refusals, 20);  // more say nothing new
    const double ratio = std::pow(rules.factor("premoult.refusal_ratio"), counted);
    const double odds = std::min(1e9, chance.prior / (1 - chance.prior) * ratio);
    chance.posterior = odds / (1 + odds);
    return chance;
}

int premoultWindow(const StageJudgement& stage, const Rules& rules) {
    return rules.days(ruleFor("premoult.window", stage.growing()));
}

double retryFactor(int further, const Rules& rules) {
    // A factor below one, which a keeper may set, must not bring the next try ever nearer.
    const double each = std::max(1.0, rules.factor("feed.retry.longer"));
    const double most = std::max(1.0, rules.factor("feed.retry.longest"));
    return std::min(most, std::pow(each, std::max(0, further)));
}

int lengthened(int days, int further, const Rules& rules) {
    return std::max(1, static_cast<int>(std::lround(days * retryFactor(further, rules))));
}

}  // namespace burrow
