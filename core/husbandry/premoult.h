// How likely a moult is soon, as far as a plain count of refusals can tell, and how much longer to
// wait with each further refusal.
#pragma once

#include "husbandry/forecast.h"

namespace burrow {

/// Prior odds times the rule's likelihood ratio for each refusal in a row (Bayes' theorem). The prior
/// is the forecast's chance of a moult within the rule's window; none without a forecast.
struct PremoultChance {
    double prior = 0;
    double posterior = 0;
    int refusals = 0;
};
[[nodiscard]] PremoultChance premoultChance(const PlanInput& input,
                                            const std::optional<MoultForecast>& forecast,
                                            const Rules& rules);

/// The days that the forecast's `soon` is about.
[[nodiscard]] int premoultWindow(const StageJudgement& stage, const Rules& rules);

/// The factor by which the time to the next try grows after `further` refusals beyond the first.
[[nodiscard]] double retryFactor(int further, const Rules& rules);
[[nodiscard]] int lengthened(int days, int further, const Rules& rules);

}  // namespace burrow
