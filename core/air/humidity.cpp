#include "air/humidity.h"

#include <algorithm>
#include <cmath>

namespace burrow::air {
namespace {

// WMO-No. 8, Annex 4.B.
constexpr double magnusPressure = 6.112;
constexpr double magnusFactor = 17.62;
constexpr double magnusOffset = 243.12;
constexpr double zeroCelsius = 273.15;
constexpr double vapourConstant = 461.5;

}  // namespace

Hectopascals saturation(Celsius temperature) {
    const double t = temperature.value;
    return {magnusPressure * std::exp(magnusFactor * t / (magnusOffset + t))};
}

Hectopascals vapourPressure(Celsius temperature, Percent humidity) {
    return saturation(temperature) * (humidity.value / 100);
}

std::optional<Celsius> dewPoint(Celsius temperature, Percent humidity) {
    if (humidity <= Percent{0}) return std::nullopt;
    const double t = temperature.value;
    const double gamma = std::log(humidity.value / 100) + magnusFactor * t / (magnusOffset + t);
    return Celsius{magnusOffset * gamma / (magnusFactor - gamma)};
}

GramsPerCubicMetre absoluteHumidity(Celsius temperature, Percent humidity) {
    const double pascals = 100 * vapourPressure(temperature, humidity).value;
    return {1000 * pascals / (vapourConstant * (temperature.value + zeroCelsius))};
}

Hectopascals deficit(Celsius temperature, Percent humidity) {
    return saturation(temperature) - vapourPressure(temperature, humidity);
}

Percent humidityAt(Celsius other, Celsius temperature, Percent humidity) {
    return {std::min(100.0, 100 * (vapourPressure(temperature, humidity) / saturation(other)))};
}

}  // namespace burrow::air
