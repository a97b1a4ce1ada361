// Where a subject stands between two moults, as far as its record shows, and until when that keeps
// feeding closed.
#pragma once

#include <optional>

#include "husbandry/stage.h"

namespace burrow {

/// `likelyPremoult`: nothing was seen, but it refused so often that a moult is the likeliest cause.
enum class Phase { between, hardening, premoult, likelyPremoult };

/// The days on which each reason to hold food back ends, also when that day is past; nothing where
/// there is no such reason.
struct Closures {
    std::optional<CivilDay> hardening;  ///< or the day its fangs were seen black, if sooner
    std::optional<CivilDay> premoult;
    std::optional<CivilDay> refusals;

    /// The gravest phase that still lasts on that day.
    [[nodiscard]] Phase phaseOn(CivilDay today) const;
    /// When the phase ends; it must not be `between`.
    [[nodiscard]] CivilDay endOf(Phase phase) const;
    /// The last of them; nothing where there is none.
    [[nodiscard]] std::optional<CivilDay> last() const;
};

[[nodiscard]] Closures closuresOf(const PlanInput& input, const StageJudgement& stage,
                                  const Rules& rules);

}  // namespace burrow
