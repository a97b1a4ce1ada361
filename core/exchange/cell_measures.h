// Lengths, masses and counts as people type them into spreadsheets.
#pragma once

#include <optional>
#include <string_view>

#include "base/units.h"
#include "exchange/mapping.h"

namespace burrow::exchange {

struct WrittenLength {
    double value = 0;
    std::optional<LengthUnit> unit;  ///< where the cell names one

    [[nodiscard]] Millimetres in(LengthUnit assumed) const;
};

/// "62", "6.2 cm", "6,2cm", "2 1/2 in", "2½\"", "~ 12 cm". Nothing for anything else, and for "1,250", which
/// may be one and a quarter or a thousand and more.
[[nodiscard]] std::optional<WrittenLength> readLength(std::string_view cell);
/// "12.5", "12,5 g".
[[nodiscard]] std::optional<Grams> readMass(std::string_view cell);
/// "20", "~20", "20 slings".
[[nodiscard]] std::optional<int> readCount(std::string_view cell);

/// The unit that a column's name ends with or has in brackets: "Size (cm)", "legspan in".
[[nodiscard]] std::optional<LengthUnit> unitNamed(std::string_view column);

/// The international inch: 25.4 mm exactly (Weights and Measures Act 1963; NBS, Federal Register 1959).
inline constexpr double millimetresPerInch = 25.4;

}  // namespace burrow::exchange
