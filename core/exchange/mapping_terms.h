// The tables behind a proposal: what columns are commonly called, and which words are commonly written in
// them. Common practice in spreadsheets; no source.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "exchange/mapping.h"

namespace burrow::exchange {

/// What a column of that name stands for in such a list; nothing where no name is like it. Slips of the
/// fingers are forgiven.
[[nodiscard]] std::optional<std::string> targetNamed(CsvKind kind, std::string_view column);

/// Every word that a target takes, as the tables spell it.
[[nodiscard]] std::vector<std::string> wordsOf(CsvKind kind, std::string_view target);
/// The word of a target that is meant, as the tables spell it; for what bring() reads as it stands, that.
[[nodiscard]] std::optional<std::string> wordMeant(CsvKind kind, std::string_view target,
                                                   std::string_view written);

/// "n/a", "?", "-" and the like: a cell that says that nothing is known.
[[nodiscard]] bool saysUnknown(std::string_view cell);

}  // namespace burrow::exchange
