// Reading the cells of a sheet under a mapping: shared by what proposes, what previews and what applies it.
#pragma once

#include "exchange/mapping.h"

namespace burrow::exchange {

/// A cell as the table will hold it, without a guard: empty for one in which nothing stands or that says that
/// nothing is known; nothing where it can't be read as what the column stands for.
[[nodiscard]] std::optional<std::string> readCell(const Mapping& mapping,
                                                  const ColumnMapping& column,
                                                  std::string_view cell);

/// A row by target, columns that share one joined. What can't be read stands as it was written.
using MappedRow = std::map<std::string, std::string, std::less<>>;
[[nodiscard]] MappedRow readRow(const Mapping& mapping, const std::vector<std::string>& cells);

/// The species as it is written, from one column or several; empty where there is none.
[[nodiscard]] std::string speciesWritten(const Mapping& mapping,
                                         const std::vector<std::string>& cells);

}  // namespace burrow::exchange
