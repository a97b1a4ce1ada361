// How the planner's parts make their answers; not for use outside husbandry. Every kind of care has
// two functions: one that judges, from which a whole room's outlook is made, and one that finds the
// words for what was judged.
#pragma once

#include <string>

#include "husbandry/feed_gap.h"
#include "husbandry/planner.h"

namespace burrow {

/// What each part of the planner works from. `rules` are those that hold for the subject.
struct PlanContext {
    const PlanInput& input;
    const Rules& rules;
    const PlanDay& day;
    const Forecast& forecasts;
    StageJudgement stage;
    std::optional<MoultForecast> moult;  ///< the next one
    PremoultChance chance;
    Closures closures;
    std::optional<Closing> closing;  ///< to food
    Weather weather = Weather::unknown;
};

[[nodiscard]] PlanContext contextOf(const PlanInput& input, const Rules& rules, const PlanDay& day,
                                    const Forecast& forecasts);

/// For a subject that is here.
struct CarePart {
    Verdict (*judge)(const PlanContext&);
    /// Fills in the reason and the amount.
    void (*say)(const PlanContext&, Answer&);
};
[[nodiscard]] const CarePart& partFor(Care care);
/// The verdict with its priority.
[[nodiscard]] Verdict judged(Care care, const PlanContext& context);

// The parts, by file: feeding, rounds, moult_check, heads, home, breeding.
extern const CarePart feedPart;
extern const CarePart leftoversPart;
extern const CarePart lookPart;
extern const CarePart waterPart;
extern const CarePart dampPart;
extern const CarePart moultCheckPart;
extern const CarePart headcountPart;
extern const CarePart measurePart;
extern const CarePart quarantinePart;
extern const CarePart rehousePart;
extern const CarePart breedingPart;

/// Whole days since, none for a day that a phone with a wrong clock put after today.
[[nodiscard]] int daysSince(CivilDay day, CivilDay today);
/// The message with `days` among its arguments; its id ends in ".today" where that is none.
[[nodiscard]] Message sinceMessage(std::string id, int days);
/// From `from`: the least gap opens it, the middle is best, the most is late.
[[nodiscard]] Window windowAfter(CivilDay from, Range<int> gap);
/// Food or hands were held back until that day: wanted at once, and late after one usual gap.
[[nodiscard]] Window windowFrom(CivilDay day, Range<int> gap);
/// Where two reasons set a window, neither may be met too soon.
[[nodiscard]] Window laterOf(const Window& a, const Window& b);
/// When it came, else hatched, else was first written about, but not after today.
[[nodiscard]] CivilDay knownSince(const PlanInput& input, CivilDay today);

/// Due from the day the window opens.
[[nodiscard]] Verdict inWindow(Care care, Because because, const Window& window, CivilDay today);
[[nodiscard]] Verdict nothingToDo(Care care, Because because);

/// Why nobody should open the tub more than must be today: everything that closes it to food, a soft
/// member of a group, heat and cold.
[[nodiscard]] std::optional<Closing> handsOff(const PlanContext& context);
/// What was due is held, what was waiting waits at least as long.
[[nodiscard]] Verdict heldBack(Verdict verdict, const std::optional<Closing>& closing);
/// "Soft since its moult of 4 May. Opens 18 May": for what is held back.
[[nodiscard]] Message holdMessage(const Verdict& verdict);

}  // namespace burrow
