// What a change of rules would do to the plan, before it is made.
#pragma once

#include <array>
#include <span>
#include <vector>

#include "husbandry/coming.h"

namespace burrow {

/// One kind of care of one subject, where anything about it changes.
struct PreviewLine {
    std::size_t input = 0;  ///< position in what was given
    Verdict before;
    Verdict after;
    std::vector<CivilDay> daysBefore;  ///< on which it would be done (coming.h)
    std::vector<CivilDay> daysAfter;

    /// "Feeding 14 May instead of 12 May", "Feeding 4 times instead of 3".
    [[nodiscard]] Message says() const;
};

struct Preview {
    std::vector<PreviewLine> lines;  ///< by position, then in the order of `Care`
    int concerned = 0;               ///< subjects for whom a rule has another value
    int changed = 0;                 ///< those of them with a line
    /// How often each kind of care would be done for those concerned.
    std::array<int, allCare.size()> timesBefore{};
    std::array<int, allCare.size()> timesAfter{};
};

[[nodiscard]] Preview previewRules(std::span<const PlanInput> inputs, const Rules& before,
                                   const Rules& after, const PlanDay& day, int days,
                                   const Forecast& forecasts);

}  // namespace burrow
