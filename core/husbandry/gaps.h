// How many days lie between two cares of an animal like this, whatever its record says.
#pragma once

#include "husbandry/stage.h"

namespace burrow {

[[nodiscard]] Range<int> mealGap(const StageJudgement& stage, const Rules& rules);
/// Slings have no dish: theirs is the gap between drops on the web or the wall.
[[nodiscard]] Range<int> waterGap(const StageJudgement& stage, const Rules& rules);
/// A sling's tub dries sooner than a grown animal's of the same species, never later. `profile` may
/// be null.
[[nodiscard]] Range<int> dampGap(const StageJudgement& stage, const Profile* profile,
                                 const Rules& rules);
/// The gap that is aimed at: the middle.
[[nodiscard]] int usual(Range<int> gap);

}  // namespace burrow
