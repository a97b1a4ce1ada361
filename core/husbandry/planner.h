// What is due for one subject, what is held back, what can wait, and why: an answer for every kind
// of care. Pure: the same record, rules and day give the same plan.
#pragma once

#include <array>
#include <optional>
#include <string_view>

#include "husbandry/gaps.h"
#include "husbandry/phase.h"

namespace burrow {

/// In the order in which they are done at one enclosure.
enum class Care { leftovers, look, feed, water, damp };
inline constexpr std::array allCare{Care::leftovers, Care::look, Care::feed, Care::water,
                                    Care::damp};

/// `hold`: it would do harm now. `waiting`: its day has not come, or leftovers come first. `none`:
/// there is nothing to do, and no day on which there will be, as far as the record shows.
enum class State { due, hold, waiting, none };

/// In files and on the command line: "feed", "waiting".
[[nodiscard]] std::string_view name(Care care);
[[nodiscard]] std::string_view name(State state);

/// The first day, the best and the last before it is late.
struct Window {
    CivilDay opens;
    CivilDay best;
    CivilDay late;

    friend bool operator==(const Window&, const Window&) = default;
};

struct Answer {
    Care care = Care::feed;
    State state = State::none;
    std::optional<Window> window;   ///< nothing only for `none`
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

/// Whether a day's list shows it: what is due, and a feeding that is held back.
[[nodiscard]] bool isListed(const Answer& answer);
/// The first that is listed, else the one about feeding: what counts where one answer is shown.
[[nodiscard]] const Answer& mainAnswer(const Plan& plan);

[[nodiscard]] Plan planFor(const PlanInput& input, const Rules& rules, const PlanDay& day);

}  // namespace burrow
