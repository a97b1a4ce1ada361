// How the usual gap between two meals is stretched or shortened for one animal on one day.
#pragma once

#include "husbandry/gaps.h"
#include "husbandry/premoult.h"
#include "husbandry/weather.h"

namespace burrow {

/// Each 1 where it does not apply.
struct GapFactors {
    double own = 1;          ///< the keeper's
    double afterMoult = 1;   ///< it fills up after a moult
    double towardMoult = 1;  ///< it eats less as the next one nears
    double cold = 1;         ///< it digests slowly

    [[nodiscard]] double product() const { return own * afterMoult * towardMoult * cold; }
};

[[nodiscard]] GapFactors gapFactors(const PlanInput& input, const StageJudgement& stage,
                                    const std::optional<MoultForecast>& forecast,
                                    const PremoultChance& chance, Weather weather,
                                    const Rules& rules, CivilDay today);

/// Mass of a meal as a part of the usual one for an animal like this, within the bounds of the rule.
/// Mass goes with the cube of length, as for bodies of one shape.
class MealScale {
public:
    MealScale(const PlanInput& input, const StageJudgement& stage, const Rules& rules);
    /// 1 where no length was written down, where only a part was eaten (nobody knows how much), and
    /// for several under one tag.
    [[nodiscard]] double of(const Meal& meal) const;

private:
    bool counts_;
    Millimetres usual_;
    int count_ = 1;
    Range<double> bounds_;
};

/// At least one day, and in order.
[[nodiscard]] Range<int> scaled(Range<int> gap, double factor);

}  // namespace burrow
