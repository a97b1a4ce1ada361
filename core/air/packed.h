// Readings as a short text, as a book keeps them: whole seconds, hundredths of a degree and of a percent.
//
//   1 1778267640 t2450h6120 300t-10h15 t10h th20
//
// The version, the first moment in seconds since 1970 UTC, then one word for each reading: seconds since
// the one before, left out where they are as before; "t" and "h" with the change in hundredths since the
// last value, left out where there is none. A reading without "t" has no temperature.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "air/sample.h"

namespace burrow::air {

/// The longest text that packed() makes and unpacked() reads.
constexpr std::size_t longestPacked = 48'000;

/// The reading as it can be kept.
[[nodiscard]] Sample rounded(const Sample& sample);

/// In the order of time, each moment once: of several readings of one moment the means of what they
/// say, so that two loggers on one place unite whoever is read first. All rounded.
[[nodiscard]] std::vector<Sample> united(std::vector<Sample> samples);

/// Rounded readings in the order of time, each moment once, in as many texts as that takes.
[[nodiscard]] std::vector<std::string> packed(std::span<const Sample> samples);

/// Nothing for what packed() would not write: another version, moments that do not go up, values that no
/// room has, anything too long.
[[nodiscard]] std::optional<std::vector<Sample>> unpacked(std::string_view text);

}  // namespace burrow::air
