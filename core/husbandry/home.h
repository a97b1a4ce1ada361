// Whether a home is large enough, as far as the planner asks: the rest (drop height, depth of the
// ground, which home instead) is the business of whoever plans the move.
#pragma once

#include "husbandry/stage.h"

namespace burrow {

/// The least a home must have for a leg span.
struct HomeNeed {
    Millimetres floor;   ///< of the longer side
    Millimetres width;   ///< of the shorter side
    Millimetres height;  ///< above the ground
    Millimetres ground;  ///< depth of it
};
[[nodiscard]] HomeNeed homeNeed(Millimetres span, const Rules& rules);

enum class HomeFit { unknown, fits, tooSmall };
/// Sizes that are not recorded are taken to be large enough; `unknown` where none are. A home whose ground
/// could be dug out or filled up to suit is not too small.
[[nodiscard]] HomeFit fitOf(const HomeSize& home, const HomeNeed& need);

}  // namespace burrow
