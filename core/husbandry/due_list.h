// The lines of a day, in the order in which a keeper walks the room.
#pragma once

#include <span>
#include <vector>

#include "husbandry/planner.h"

namespace burrow {

/// Whether a stands before b on the way.
[[nodiscard]] bool walksBefore(const PlanInput& a, const PlanInput& b);

/// Positions in `inputs` in walking order: by shelf, those in quarantine last so that nothing is
/// carried from them to the rest, then by number.
[[nodiscard]] std::vector<std::size_t> walkOrder(std::span<const PlanInput> inputs);

struct DueLine {
    std::size_t input = 0;  ///< position in what was given
    Answer answer;
};

/// All that is due, and every feeding that is held back, one line for each subject and care, in
/// walking order and at each enclosure in the order of `Care`.
[[nodiscard]] std::vector<DueLine> dueList(std::span<const PlanInput> inputs, const Rules& rules,
                                           const PlanDay& day);

}  // namespace burrow
