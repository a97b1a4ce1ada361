// The sentences of a care sheet, made from the profile of the species and the rules for the animal.
#pragma once

#include <string>
#include <vector>

#include "documents/caresheet.h"

namespace burrow::documents {

/// One rule: a word at the left and one line beside it.
struct Rule {
    std::string name;
    std::string line;
};

/// Housing, Warmth, Damp, Feeding, After a moult, Refuses food, Handling, in this order; without
/// those the profile says nothing about.
[[nodiscard]] std::vector<Rule> careRules(const CareSheet& sheet, const Words& words);

/// "Female, 110 mm leg span."
[[nodiscard]] std::string subjectLine(const CareSheet& sheet, const Words& words);
/// "Last moult 3 May 2026. Last meal 9 May 2026."; empty where neither is on record.
[[nodiscard]] std::string recentLine(const CareSheet& sheet, const Words& words);
/// Where trade in the species is listed, with the day the list was looked at; empty where none is
/// known.
[[nodiscard]] std::string tradeLine(const CareSheet& sheet, const Words& words);

/// A day with its year: paper outlives the year it was printed in.
[[nodiscard]] std::string printedDay(CivilDay day, const Words& words);

}  // namespace burrow::documents
