// The plan run forward: what a keeper who does everything on its best day, and whose animals eat what
// they are offered, will do in the days to come. Moults that may come by then are not played.
#pragma once

#include <optional>
#include <vector>

#include "husbandry/planner.h"
#include "husbandry/prey.h"

namespace burrow {

struct ComingTask {
    CivilDay day;
    Care care = Care::feed;
    std::optional<PreySuggestion> prey;  ///< of a feeding
};

/// From today, for so many days, in the order in which they are done. What is taken up by itself
/// (isOfRound) comes once at most.
[[nodiscard]] std::vector<ComingTask> comingTasks(const PlanInput& input, const Rules& rules,
                                                  const PlanDay& day, int days,
                                                  const Forecast& forecasts);

}  // namespace burrow
