// The numbers by which a projection is fitted, and back.
#pragma once

#include <array>

#include "measure/plane.h"

namespace burrow::measure {

/// Coordinates in which the parameters are of the same size: the sheet about the symbols' middle, the
/// photo about its own.
struct FitFrame {
    MatPoint centre;
    double extent = 1;  ///< mm
    ImagePoint middle;
    double radius = 1;  ///< half the photo's diagonal, pixels
};

/// Eight of the homography and the radial term.
inline constexpr std::size_t parameterCount = 9;
using Parameters = std::array<double, parameterCount>;
[[nodiscard]] Projection projectionOf(const Parameters& parameters, const FitFrame& frame);
/// The parameters of a homography without a radial term.
[[nodiscard]] Parameters parametersOf(const Homography& toPicture, const FitFrame& frame);

}  // namespace burrow::measure
