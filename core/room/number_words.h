// The numbers of the tables in words: what a table, a row, a number and the setting that holds one are called.
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "room/own_numbers.h"
#include "words/words.h"

namespace burrow {

/// As many digits as it has, unlike plainNumber(): likelihood ratios go below a hundredth.
[[nodiscard]] std::string numberText(double value);

/// "Sexing: a moult looked at for a plate"
[[nodiscard]] std::string tableHeading(std::string_view file, std::string_view table,
                                       const Words& words);
/// "7 to 11, clearly" for "7_to_11.clearly". The ids of the tables are the source of it: they are words.
[[nodiscard]] std::string rowHeading(std::string_view row);
/// "where a plate shows"
[[nodiscard]] std::string columnName(const NumberKey& key, const Words& words);
/// "where a plate shows 12"
[[nodiscard]] std::string columnText(const NumberKey& key, double value, const Words& words);

/// The place of the number that a setting of the book holds; nothing for other settings. The number may be
/// unknown here: a later version wrote it.
[[nodiscard]] std::optional<NumberKey> numberOfSetting(std::string_view name);
/// "Sexing, a moult looked at for a plate, 7 to 11, clearly: where a plate shows"
[[nodiscard]] std::string placeText(const NumberKey& key, const Words& words);

}  // namespace burrow
