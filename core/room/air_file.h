// A temperature logger's file: taken apart, read, and named by its hash.
#pragma once

#include "air/logger.h"
#include "base/hash.h"

namespace burrow {

struct AirFile {
    Sha256 hash;
    air::LoggerLog log;
};

/// Larger ones are no logger's.
inline constexpr std::uint64_t largestAirFile = 200'000'000;

/// `text` is a CSV file in UTF-8, with comma, semicolon or tab. Fails with `badInput` where it is none, and
/// for what air::readLogger() refuses. A row that is no CSV is among the bad ones.
[[nodiscard]] Result<AirFile> readAirFile(std::string_view text, const Zone& zone,
                                          const air::AirRules& rules,
                                          std::optional<air::DateOrder> order = std::nullopt);

/// A temperature or a humidity as someone types it: "24.5", "24,5 °C". Fails with `badInput` for what no
/// room has.
[[nodiscard]] Result<Celsius> readTemperature(std::string_view typed);
[[nodiscard]] Result<air::Percent> readHumidity(std::string_view typed);

}  // namespace burrow
