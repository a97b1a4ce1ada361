// Reads what a temperature logger exports: rows of text with a header, however its maker spells the
// columns, the dates and the numbers. The file itself is taken apart elsewhere; what comes from it is
// untrusted.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "air/sample.h"
#include "base/zone.h"
#include "model/profile.h"

namespace burrow::air {

struct LoggerRow {
    int line = 0;  ///< in the file, for what is said of it
    std::vector<std::string> cells;
};

enum class DateOrder { dayFirst, monthFirst };

struct BadRow {
    int line = 0;
    Message why;
};

struct LoggerLog {
    std::vector<Sample> samples;  ///< in the order of time, one for each instant
    std::vector<BadRow> bad;      ///< in the order of the file
    int repeated = 0;             ///< rows left out because their instant was there already
    bool isFahrenheit = false;    ///< the header said so, and the samples were changed to Celsius
};

/// No logger of a room writes more.
constexpr std::size_t mostRows = 2'000'000;

/// Columns are found by their names (table "columns"): a moment, or a date and a time of day; a
/// temperature, a humidity, or both. Dates may be ISO 8601, year first, with dots (day first), or with
/// slashes or hyphens, where day or month may come first: what the numbers allow decides, then which
/// reading keeps the rows in order and close together, else `order`. Times without an offset are the
/// zone's, or UTC where the header says so; of an hour that comes twice when the clocks go back the second
/// is taken once the rows have passed the first. Decimal points and commas; Fahrenheit where the header
/// says so. Temperatures from -40 to 80 degrees Celsius and humidities from 0 to 100 (up to 105 counts as
/// 100) are taken; other rows are reported and left out.
///
/// Fails with `badInput` for a header without the columns, for more than `mostRows` rows, and where it
/// can't be told whether day or month comes first (ask, and try again with `order`). O(n log n).
[[nodiscard]] Result<LoggerLog> readLogger(std::span<const std::string> header,
                                           std::span<const LoggerRow> rows, const Zone& zone,
                                           const AirRules& rules,
                                           std::optional<DateOrder> order = std::nullopt);

}  // namespace burrow::air
