// Why, and why not: one answer with all that it was worked out from, for a keeper who doubts it. There
// is one for every subject and every kind of care.
#pragma once

#include <vector>

#include "husbandry/planner.h"

namespace burrow {

struct Explanation {
    Answer answer;
    /// What was weighed, one sentence each: the stage, the gap and what stretched it, the forecast.
    std::vector<Message> working;
    /// Every rule that was asked for, with its value, where that comes from and its source.
    std::vector<Rule> rules;
};

[[nodiscard]] Explanation explain(Care care, const PlanInput& input, const Rules& rules,
                                  const PlanDay& day, const Forecast& forecasts);

}  // namespace burrow
