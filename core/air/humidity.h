// What temperature and relative humidity say together: dew point, absolute humidity, vapour pressure
// deficit. Over water, at any pressure found on land (the enhancement factor, under half a percent, is
// left out).
#pragma once

#include <optional>

#include "base/units.h"

namespace burrow::air {

using Percent = Quantity<struct PercentUnit>;
using Hectopascals = Quantity<struct HectopascalUnit>;
using GramsPerCubicMetre = Quantity<struct GramPerCubicMetreUnit>;

/// Saturation vapour pressure over water by the Magnus formula of WMO-No. 8, Annex 4.B:
/// 6.112 exp(17.62 t / (243.12 + t)) hPa, for -45 to 60 degrees. Low by 0.2 to 0.3 % between 10 and 40
/// degrees, compared with IAPWS-95.
[[nodiscard]] Hectopascals saturation(Celsius temperature);

/// The part of it that is there.
[[nodiscard]] Hectopascals vapourPressure(Celsius temperature, Percent humidity);

/// Where that would be saturation: the formula above, solved for t. Nothing for air without vapour.
[[nodiscard]] std::optional<Celsius> dewPoint(Celsius temperature, Percent humidity);

/// Ideal gas: e / (R_v T) with R_v = 461.5 J/(kg K).
[[nodiscard]] GramsPerCubicMetre absoluteHumidity(Celsius temperature, Percent humidity);

/// Saturation less what is there: how strongly the air dries.
[[nodiscard]] Hectopascals deficit(Celsius temperature, Percent humidity);

/// Relative humidity of the same air warmed or cooled to another temperature, its vapour pressure
/// unchanged; up to 100.
[[nodiscard]] Percent humidityAt(Celsius other, Celsius temperature, Percent humidity);

}  // namespace burrow::air
