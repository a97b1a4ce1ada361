// What to offer, how long and how many.
#pragma once

#include <optional>
#include <string>

#include "husbandry/phase.h"

namespace burrow {

/// `killed`: where a soft animal could be bitten. `pieces`: for an animal too small for whole prey.
enum class Serving { whole, killed, pieces };

struct PreySuggestion {
    std::string kind;  ///< a feeder's name in the rules ("fruit_fly"), or the keeper's own word
    Millimetres length;
    int count = 1;
    Serving serving = Serving::whole;
    Message reason;

    /// "1 cricket, 8 mm"
    [[nodiscard]] Message amount() const;
};

/// The kind it accepted last, else the stage's usual one; a length from its own size, else the
/// stage's usual one; smaller after repeated refusals, and after a premoult that led to no moult.
[[nodiscard]] PreySuggestion suggestPrey(const PlanInput& input, const StageJudgement& stage,
                                         const Closures& closures, const Rules& rules,
                                         CivilDay today);

/// The length of a usual meal for its size, as it is sold: what a meal is measured against. Zero for an
/// animal that takes pieces.
[[nodiscard]] Millimetres usualLength(const StageJudgement& stage, const Rules& rules);

/// Down to the next length that is sold: whole millimetres below 10, then every 2 to 20, then
/// every 5. Zero below 1 mm.
[[nodiscard]] Millimetres soldLength(Millimetres length);

/// A typed feeder as the rules call it ("Fruit flies" is "fruit_fly"); the keeper's own word where
/// the rules have none. An empty text gives "unnamed".
[[nodiscard]] std::string feederTerm(const std::string& typed, const Rules& rules);

}  // namespace burrow
