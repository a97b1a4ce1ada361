// A straight line through pairs by ordinary least squares, with how sure it is.
#pragma once

#include <optional>
#include <span>

namespace burrow::growth {

struct Pair {
    double x = 0;
    double y = 0;
};

struct Line {
    double intercept = 0;
    double slope = 0;
    double interceptError = 0;  ///< standard errors
    double slopeError = 0;
    double residual =
        0;  ///< standard deviation of what is left over, with n - 2 degrees of freedom
    int count = 0;
    double meanX = 0;
    double sumOfSquaresX = 0;  ///< of the differences from meanX

    [[nodiscard]] double at(double x) const { return intercept + slope * x; }
    /// Half the width of the interval in which the next single value at x lies with that confidence, by
    /// Student's t (Draper and Smith, Applied Regression Analysis, 3rd ed., 3.1).
    [[nodiscard]] double halfWidthOfNext(double x, double confidence) const;
};

/// Nothing for fewer than three pairs, or where all x are the same.
[[nodiscard]] std::optional<Line> fitLine(std::span<const Pair> pairs);

}  // namespace burrow::growth
