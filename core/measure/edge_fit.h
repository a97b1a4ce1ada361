// The projection that fits the edges of one or more symbols best, and how sure it is.
#pragma once

#include <span>
#include <vector>

#include "base/result.h"
#include "measure/fit_frame.h"
#include "measure/plane.h"
#include "measure/symbol_edges.h"

namespace burrow::measure {

struct EdgeFit {
    FitFrame frame;
    Parameters parameters{};
    /// By rows. It comes from how whole printed lines scatter, not single pieces, since what shifts one
    /// piece of a line shifts its neighbours too (a cluster-robust estimate).
    std::array<double, parameterCount * parameterCount> covariance{};
    double residual = 0;         ///< root mean square of the distances, pixels
    double sumOfSquares = 0;     ///< weighted
    int freedom = 0;             ///< pieces used less parameters
    double clustering = 1;       ///< by how much lines scatter more than single pieces would
    std::size_t used = 0;        ///< pieces
    std::size_t lines = 0;       ///< printed lines that they belong to
    std::vector<double> spread;  ///< of each symbol: by how much dark has grown into light, pixels
    std::vector<double> noise;   ///< of each symbol: standard deviation of a piece's place, pixels

    [[nodiscard]] Projection projection() const { return projectionOf(parameters, frame); }
    [[nodiscard]] double variance(std::size_t parameter) const {
        return covariance[parameter * (parameterCount + 1)];
    }
};

/// What is believed of the radial term before anything is seen; with a deviation of 0 it is left out.
struct RadialBelief {
    double mean = 0;
    double deviation = 0;
};

/// Levenberg and Marquardt's method on the distances across the edges; pieces farther out than four
/// standard deviations are left out. The grown dark of each symbol is a parameter of its own. Fails
/// with `badInput` where the edges are too few or determine nothing.
[[nodiscard]] Result<EdgeFit> fitEdges(std::span<const EdgePoint> edges, int symbols,
                                       const Homography& start, const Radial& lens,
                                       const RadialBelief& belief);

/// What fitEdges gives for the edges of one symbol and a straight lens, without asking how sure it is: for
/// following a symbol from one look to the next.
struct SymbolFit {
    Homography toPicture{};
    double noise = 0;  ///< standard deviation of a piece's place, pixels
};
[[nodiscard]] std::optional<SymbolFit> fitSymbol(std::span<const EdgePoint> edges,
                                                 const Homography& start, const Radial& lens);

}  // namespace burrow::measure
