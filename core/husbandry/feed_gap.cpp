#include "husbandry/feed_gap.h"

#include <algorithm>
#include <cmath>

#include "husbandry/prey.h"

namespace burrow {

GapFactors gapFactors(const PlanInput& input, const StageJudgement& stage,
                      const std::optional<MoultForecast>& forecast, const PremoultChance& chance,
                      Weather weather, const Rules& rules, CivilDay today) {
    GapFactors factors;
    factors.own = rules.factor("feed.factor");
    if (weather == Weather::cold || weather == Weather::tooCold) {
        factors.cold = rules.factor("feed.cold");
    }
    if (!forecast || input.isSeveral() || stage.stage == Stage::matureMale) return factors;
    const double passed = today - input.digest.lastMoult().value_or(today);
    if (passed < rules.factor("feed.after_moult.until") * forecast->usualInterval) {
        factors.afterMoult = rules.factor("feed.after_moult.factor");
    } else {
        const double most = std::max(1.0, rules.factor("feed.toward_moult"));
        factors.towardMoult = 1 + (most - 1) * chance.posterior;
    }
    return factors;
}

MealScale::MealScale(const PlanInput& input, const StageJudgement& stage, const Rules& rules)
    : counts_(!input.isSeveral()) {
    if (!counts_) return;
    usual_ = usualLength(stage, rules);
    count_ = rules.count(ruleFor("prey.count", stage.stage));
    bounds_ = rules.range("feed.meal");
}

double MealScale::of(const Meal& meal) const {
    if (!counts_ || meal.outcome != Outcome::ate || !meal.preyLength) return 1;
    if (usual_.value <= 0 || meal.preyLength->value <= 0) return 1;
    const double length = *meal.preyLength / usual_;
    const double ratio = length * length * length * std::max(1, meal.count) / count_;
    return std::clamp(ratio, bounds_.least, bounds_.most);
}

Range<int> scaled(Range<int> gap, double factor) {
    const auto days = [&](int from) {
        return std::max(1, static_cast<int>(std::lround(from * factor)));
    };
    const int least = days(gap.least);
    return {least, std::max(least, days(gap.most))};
}

}  // namespace burrow
