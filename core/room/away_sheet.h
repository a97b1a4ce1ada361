// What the sheet for a sitter says, gathered from the plan of an absence.
#pragma once

#include "documents/sittersheet.h"
#include "room/away.h"
#include "words/words.h"

namespace burrow {

[[nodiscard]] documents::SitterSheet sitterSheetFor(const AwayPlan& plan, const Room& room,
                                                    const Words& words);

/// What is done on one visit, shelf by shelf: one line for each kind of care with all the numbers, but one
/// for each meal, as every one is another.
struct AwayShelf {
    Place place;  ///< without position
    std::vector<std::string> lines;
};
[[nodiscard]] std::vector<AwayShelf> shelvesOf(std::span<const AwayTask> tasks, const Words& words,
                                               CivilDay today);

/// "Egg sac since 2 May, she is left alone. Fast, it bolts."
[[nodiscard]] std::string shutText(const Shut& shut, const Words& words, CivilDay today);
/// "Water: 5 days late when you are back"
[[nodiscard]] std::string waitText(const AwayWait& wait, const Words& words, CivilDay today);

}  // namespace burrow
