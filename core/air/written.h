// How loggers, and people, write moments and numbers.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "air/logger.h"

namespace burrow::air {

/// A moment whose day and month may still be the other way round.
struct WrittenMoment {
    int year = 0;
    int first = 0;   ///< the month, unless `isOpen`
    int second = 0;  ///< the day, unless `isOpen`
    bool isOpen = false;
    int secondOfDay = 0;
    std::optional<int> offsetMinutes;

    [[nodiscard]] std::optional<CivilDay> day(DateOrder order) const;
};

/// "2026-05-08T21:14:05+02:00", "8.5.2026 21:14", "05/08/26 9:14:05 PM". A date alone is midnight.
[[nodiscard]] std::optional<WrittenMoment> readMoment(std::string_view text);

enum class Reading { number, none, unreadable };
/// "23.5", "23,5 °C", "45%". None for an empty cell and for what stands for one ("--", "NaN").
[[nodiscard]] Reading readValue(std::string_view text, double& value);

/// Lower-case words of a header cell, without its marks: "Temp. (°C)" is "temp", "°c".
[[nodiscard]] std::vector<std::string> headerWords(std::string_view cell);

/// Where the columns stand.
struct Columns {
    std::optional<std::size_t> moment, clock, temperature, humidity;
    bool isFahrenheit = false;
    std::optional<int> offsetMinutes;  ///< from UTC, where the header says it
};
[[nodiscard]] Columns findColumns(std::span<const std::string> header, const AirRules& rules);

}  // namespace burrow::air
