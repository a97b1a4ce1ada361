// One reading of a thermometer and hygrometer, and the rules that the room reads from data.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "air/humidity.h"
#include "base/civil.h"
#include "base/result.h"
#include "model/profile.h"

namespace burrow::air {

/// At least one of the two is there.
struct Sample {
    Instant at;
    std::optional<Celsius> temperature;
    std::optional<Percent> humidity;

    friend bool operator==(const Sample&, const Sample&) = default;
};

/// What a column of a logger's file holds.
enum class ColumnRole { moment, date, clock, temperature, humidity };

/// When a reading outside its range is worth a word.
struct Patience {
    double back = 0;       ///< how far inside again it must be before the alarm ends
    int leastMinutes = 0;  ///< shorter ones are left out
};

/// The tables of assets/rules/tables/air.json.
struct AirRules {
    struct ColumnName {
        ColumnRole role;
        std::string words;  ///< "relative humidity", in lower case
    };
    std::vector<ColumnName> columns;
    Patience warmth;
    Patience humidity;
    int longestGapMinutes = 180;  ///< between samples that are still joined by a line
    Celsius base;                 ///< day-degrees count from here
    /// In which humidity of the air those do well whose ground is kept so damp, by Damp.
    std::array<Range<Percent>, 4> humidityFor{};

    [[nodiscard]] const Range<Percent>& humidityOf(Damp damp) const {
        return humidityFor.at(static_cast<std::size_t>(damp));
    }

    /// Fails with `badInput` for a file that is no such tables.
    static Result<AirRules> fromJson(std::string_view file);
};

}  // namespace burrow::air
