// What is due for one subject, what is held back, what can wait, and why: an answer for every kind
// of care. Pure: the same record, rules and day give the same plan.
#pragma once

#include <array>
#include <optional>
#include <string_view>

#include "husbandry/care.h"
#include "husbandry/forecast.h"
#include "husbandry/gaps.h"
#include "husbandry/phase.h"

namespace burrow {

/// A verdict in words.
struct Answer : Verdict {
    std::optional<Message> amount;  ///< what to do, where there is more to say than the verb
    Message reason;                 ///< the fact behind it, and when it ends

    /// "Feed", "Hold"; for what waits or is not needed, "Wait" and "Nothing".
    [[nodiscard]] Message verb(Form form) const;

    friend bool operator==(const Answer&, const Answer&) = default;
};

struct Plan {
    StageJudgement stage;
    Phase phase = Phase::between;
    std::array<Answer, allCare.size()> answers;

    [[nodiscard]] const Answer& of(Care care) const {
        return answers[static_cast<std::size_t>(care)];
    }
};

/// The same without words: some hundred bytes, where a plan has thousands.
struct Outlook {
    Stage stage = Stage::juvenile;
    Phase phase = Phase::between;
    std::array<Verdict, allCare.size()> verdicts;

    [[nodiscard]] const Verdict& of(Care care) const {
        return verdicts[static_cast<std::size_t>(care)];
    }
    friend bool operator==(const Outlook&, const Outlook&) = default;
};

/// Whether a day's list shows it: what is due, and a feeding that is held back.
[[nodiscard]] bool isListed(const Verdict& verdict);
/// Whether it is done in passing, on a round along the shelves; the rest is taken up by itself.
[[nodiscard]] bool isOfRound(Care care);
/// The first that is listed, else the one about feeding: what counts where one answer is shown.
[[nodiscard]] const Answer& mainAnswer(const Plan& plan);

/// `rules` may be those for everyone: the subject's own are found in them. Without `forecasts` the
/// plain ones are asked (plain_forecast.h).
[[nodiscard]] Plan planFor(const PlanInput& input, const Rules& rules, const PlanDay& day);
[[nodiscard]] Plan planFor(const PlanInput& input, const Rules& rules, const PlanDay& day,
                           const Forecast& forecasts);
[[nodiscard]] Outlook outlookFor(const PlanInput& input, const Rules& rules, const PlanDay& day,
                                 const Forecast& forecasts);

}  // namespace burrow
