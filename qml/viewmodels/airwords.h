// The air in words.
#pragma once

#include "room/air_report.h"
#include "viewmodels/wording.h"

namespace burrow {

/// "Warm room", "Rack A, shelf 2": a place as readings are written for it.
[[nodiscard]] QString airPlaceText(const std::string& place, const Desk& desk);
/// "24.5 °C, 65 % humidity"
[[nodiscard]] QString readingText(const air::Sample& sample, const Desk& desk);
/// "8 May, 21:14"
[[nodiscard]] QString momentText(Instant at, const Desk& desk);
/// "18 to 26 °C suit all 12 that stand here"
[[nodiscard]] QString wantedText(const AirReport& report, const Desk& desk);
/// One decimal, as much as such thermometers know.
[[nodiscard]] double tenths(double value);

}  // namespace burrow
