// Light and colour of a flattened photo: the grey patch says what neutral was.
#pragma once

#include <array>
#include <cstdint>

#include "base/result.h"
#include "measure/survey.h"
#include "pictures/raster.h"

namespace burrow::measure {

/// The sRGB curve (IEC 61966-2-1): a byte to linear light, 0 to 1, and back, rounded.
[[nodiscard]] double linearLight(std::uint8_t coded);
[[nodiscard]] std::uint8_t codedLight(double linear);

/// What each channel's byte becomes.
struct Balance {
    std::array<std::array<std::uint8_t, 256>, 3> table{};
    std::array<double, 3> gains{1, 1, 1};  ///< in linear light

    [[nodiscard]] static Balance none();
    [[nodiscard]] static Balance by(const std::array<double, 3>& gains);
};

/// Makes the mat's grey patch what it was printed as, sRGB 102 in each channel, by one factor for each
/// channel in linear light. Fails with `badInput` where the patch is not whole in the photo, too dark,
/// too light or uneven to say anything, or asks for more than a fourfold change.
[[nodiscard]] Result<Balance> balanceOf(const pictures::Raster& photo, const Survey& survey,
                                        const MeasureRules& rules = shippedRules());

}  // namespace burrow::measure
