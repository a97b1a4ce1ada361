#include "growth/line.h"

#include <boost/math/distributions/students_t.hpp>
#include <cmath>

namespace burrow::growth {

std::optional<Line> fitLine(std::span<const Pair> pairs) {
    if (pairs.size() < 3) return std::nullopt;
    const auto n = static_cast<double>(pairs.size());
    Line line;
    line.count = static_cast<int>(pairs.size());
    double meanY = 0;
    for (const auto& [x, y] : pairs) {
        line.meanX += x / n;
        meanY += y / n;
    }
    // About the means: sums of squares of the numbers themselves would lose digits.
    double products = 0;
    for (const auto& [x, y] : pairs) {
        line.sumOfSquaresX += (x - line.meanX) * (x - line.meanX);
        products += (x - line.meanX) * (y - meanY);
    }
    const double spread = std::abs(line.meanX) * 1e-9;
    if (!(line.sumOfSquaresX > n * spread * spread)) return std::nullopt;
    line.slope = products / line.sumOfSquaresX;
    line.intercept = meanY - line.slope * line.meanX;
    double squares = 0;
    for (const auto& [x, y] : pairs) squares += (y - line.at(x)) * (y - line.at(x));
    line.residual = std::sqrt(squares / (n - 2));
    line.slopeError = line.residual / std::sqrt(line.sumOfSquaresX);
    line.interceptError =
        line.residual * std::sqrt(1 / n + line.meanX * line.meanX / line.sumOfSquaresX);
    return line;
}

double Line::halfWidthOfNext(double x, double confidence) const {
    const boost::math::students_t student(count - 2);
    const double t = boost::math::quantile(student, (1 + confidence) / 2);
    const double away = x - meanX;
    return t * residual * std::sqrt(1 + 1.0 / count + away * away / sumOfSquaresX);
}

}  // namespace burrow::growth
