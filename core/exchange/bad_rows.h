// The rows of a CSV file that could not be brought in, as a file to correct and bring in again.
#pragma once

#include <filesystem>
#include <functional>
#include <span>

#include "exchange/bring.h"

namespace burrow::exchange {

/// Those rows under the header they had, each as it stood, with a column for the reason. `source` is
/// the file they come from, and must be one that bring() could read; `say` puts a reason into words.
[[nodiscard]] std::string badRowsFile(std::string_view source, std::span<const BadRow> bad,
                                      const std::function<std::string(const Message&)>& say);

/// "animals.csv" gives "animals.bad.csv" beside it, or "animals.bad-2.csv" where rows are being corrected
/// there already.
[[nodiscard]] std::filesystem::path badRowsPath(const std::filesystem::path& source);

}  // namespace burrow::exchange
