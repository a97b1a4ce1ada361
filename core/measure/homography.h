// The homography between points that belong together, as many as there are.
#pragma once

#include <span>
#include <vector>

#include "base/result.h"
#include "measure/plane.h"

namespace burrow::measure {

struct PointPair {
    ImagePoint from;
    ImagePoint to;
};

/// By the direct linear transformation with normalised points (Hartley 1997). Exact for four pairs; of
/// more it is the least algebraic error, good enough to start from. Fails with `badInput` where points
/// are fewer than four, or lie so that they say nothing.
[[nodiscard]] Result<Homography> directHomography(std::span<const PointPair> pairs);

struct HomographyFit {
    Homography homography{};
    std::vector<bool> isUsed;  ///< of each pair: those that fit no plane are left out
    double sumOfSquares = 0;   ///< of distances in the plane of `to`, over those used
};

/// The least sum of squared distances in the plane of `to`, by Levenberg and Marquardt's method from
/// the direct one. With `tolerance`, pairs farther than that from where most agree are left out
/// (random samples of four, Fischler and Bolles 1981, from a fixed seed). Fails as directHomography.
[[nodiscard]] Result<HomographyFit> fitHomography(std::span<const PointPair> pairs,
                                                  std::optional<double> tolerance = std::nullopt);

}  // namespace burrow::measure
