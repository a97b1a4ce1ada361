// How the planner's parts make their answers; not for use outside husbandry.
#pragma once

#include <string>

#include "husbandry/planner.h"

namespace burrow {

/// What each part of the planner works from.
struct PlanContext {
    const PlanInput& input;
    const StageJudgement& stage;
    const Closures& closures;
    const Rules& rules;
    const PlanDay& day;
};

[[nodiscard]] Answer answerFeed(const PlanContext& context);
[[nodiscard]] Answer answerLeftovers(const PlanContext& context);
[[nodiscard]] Answer answerLook(const PlanContext& context);
[[nodiscard]] Answer answerWater(const PlanContext& context);
[[nodiscard]] Answer answerDamp(const PlanContext& context);

/// Whole days since, none for a day that a phone with a wrong clock put after today.
[[nodiscard]] int daysSince(CivilDay day, CivilDay today);
/// The message with `days` among its arguments; its id ends in ".today" where that is none.
[[nodiscard]] Message sinceMessage(std::string id, int days);
/// From `from`: the least gap opens it, the middle is best, the most is late.
[[nodiscard]] Window windowAfter(CivilDay from, Range<int> gap);
/// When it came, else hatched, else was first written about, but not after today.
[[nodiscard]] CivilDay knownSince(const PlanInput& input, CivilDay today);

}  // namespace burrow
