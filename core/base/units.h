// Quantities that cannot be mixed up: a span in millimetres is not a mass in grams.
#pragma once

#include <compare>

namespace burrow {

/// A number with a unit. Adds and compares only with its own kind; scaling needs a plain number.
template <class Unit>
struct Quantity {
    double value = 0;

    friend constexpr auto operator<=>(Quantity, Quantity) = default;
    friend constexpr Quantity operator+(Quantity a, Quantity b) { return {a.value + b.value}; }
    friend constexpr Quantity operator-(Quantity a, Quantity b) { return {a.value - b.value}; }
    friend constexpr Quantity operator*(Quantity a, double factor) { return {a.value * factor}; }
    friend constexpr Quantity operator*(double factor, Quantity a) { return {a.value * factor}; }
    friend constexpr double operator/(Quantity a, Quantity b) { return a.value / b.value; }
};

using Millimetres = Quantity<struct MillimetreUnit>;
using Grams = Quantity<struct GramUnit>;
using Celsius = Quantity<struct CelsiusUnit>;

namespace literals {
constexpr Millimetres operator""_mm(long double v) { return {static_cast<double>(v)}; }
constexpr Millimetres operator""_mm(unsigned long long v) { return {static_cast<double>(v)}; }
constexpr Grams operator""_g(long double v) { return {static_cast<double>(v)}; }
constexpr Celsius operator""_degC(long double v) { return {static_cast<double>(v)}; }
}  // namespace literals

}  // namespace burrow
