// Where a subject stands between two moults, as far as its record shows, what else keeps it closed to
// food and hands, and until when.
#pragma once

#include <optional>

#include "husbandry/care.h"
#include "husbandry/stage.h"

namespace burrow {

/// `likelyPremoult`: nothing was seen, but it refused so often, or with its next moult so near, that
/// a moult is the likeliest cause.
enum class Phase { between, hardening, premoult, likelyPremoult };

/// In files: "between", "likely_premoult".
[[nodiscard]] std::string_view name(Phase phase);

/// The days on which each reason to hold back ends, also when that day is past; nothing where there
/// is no such reason.
struct Closures {
    std::optional<CivilDay> hardening;  ///< or the day its fangs were seen black, if sooner
    std::optional<CivilDay> premoult;
    std::optional<CivilDay> refusals;
    std::optional<CivilDay> eggSac;    ///< she is left alone with it
    std::optional<CivilDay> settling;  ///< newly housed or new in the room
    std::optional<CivilDay> settlingSince;

    /// The gravest phase that still lasts on that day.
    [[nodiscard]] Phase phaseOn(CivilDay today) const;
    /// When the phase ends; it must not be `between`.
    [[nodiscard]] CivilDay endOf(Phase phase) const;
    /// The last of them, without a new home that it comes into only after today; nothing where there
    /// is none.
    [[nodiscard]] std::optional<CivilDay> last(CivilDay today) const;
    /// Whether it has been housed or has come by that day, and not only in the book of a phone whose
    /// clock is ahead.
    [[nodiscard]] bool hasCome(CivilDay today) const {
        return settlingSince && *settlingSince <= today;
    }
};

/// A reason to hold back today.
struct Closing {
    Because because;
    CivilDay since;
    CivilDay opens;  ///< after today
};

/// `soon` is the chance of a moult within the rule's window (premoult.h), none where nothing is
/// known of it.
[[nodiscard]] Closures closuresOf(const PlanInput& input, const StageJudgement& stage,
                                  const Rules& rules, double soon = 0);

/// The gravest reason to hold food back today. What is known of one member closes no group.
[[nodiscard]] std::optional<Closing> closingOn(const Closures& closures, const PlanInput& input,
                                               CivilDay today);

}  // namespace burrow
