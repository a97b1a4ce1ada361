#include "measure/length.h"

#include <cmath>

#include "measure/beside.h"

namespace burrow::measure {
namespace {

/// The middle 95 percent of a normal distribution.
constexpr double normal95 = 1.959964;

std::optional<double> plainLength(const Projection& projection, ImagePoint from, ImagePoint to) {
    const auto a = matOf(projection, from);
    const auto b = matOf(projection, to);
    if (!a || !b) return std::nullopt;
    return std::hypot(a->x.value - b->x.value, a->y.value - b->y.value);
}

/// The variance of the length that comes from the projection, in square millimetres; derivatives by
/// central differences of a tenth of a standard deviation.
std::optional<double> planeVariance(const Survey& survey, ImagePoint from, ImagePoint to) {
    std::array<double, parameterCount> slope{};
    for (std::size_t i = 0; i < parameterCount; ++i) {
        const double step = 0.1 * std::sqrt(survey.covariance[i * (parameterCount + 1)]);
        if (step == 0) continue;
        auto more = survey.parameters;
        auto less = survey.parameters;
        more[i] += step;
        less[i] -= step;
        const auto above = plainLength(projectionOf(more, survey.frame), from, to);
        const auto below = plainLength(projectionOf(less, survey.frame), from, to);
        if (!above || !below) return std::nullopt;
        slope[i] = (*above - *below) / (2 * step);
    }
    double variance = 0;
    for (std::size_t i = 0; i < parameterCount; ++i) {
        for (std::size_t k = 0; k < parameterCount; ++k) {
            variance += slope[i] * slope[k] * survey.covariance[i * parameterCount + k];
        }
    }
    return std::max(0.0, variance);
}

/// The same from the two points, for a deviation of one pixel.
std::optional<double> pointVariance(const Projection& projection, ImagePoint from, ImagePoint to) {
    constexpr double step = 0.05;
    double variance = 0;
    for (int i = 0; i < 4; ++i) {
        const auto moved = [&](double by) {
            auto a = from;
            auto b = to;
            auto& point = i < 2 ? a : b;
            (i % 2 == 0 ? point.x : point.y) += by;
            return plainLength(projection, a, b);
        };
        const auto above = moved(step);
        const auto below = moved(-step);
        if (!above || !below) return std::nullopt;
        const double slope = (*above - *below) / (2 * step);
        variance += slope * slope;
    }
    return variance;
}

double square(double value) { return value * value; }

}  // namespace

Millimetres Length::deviation() const {
    return {std::sqrt(square(deviations.plane.value) + square(deviations.points.value) +
                      square(deviations.height.value) + square(deviations.print.value) +
                      square(deviations.sheet.value))};
}

Millimetres cameraHeight(const Survey& survey, const MeasureRules& rules) {
    const double filmDiagonal = std::hypot(36, 24);
    const double focal = survey.focal35.value_or(rules.usualFocal) / filmDiagonal *
                         std::hypot(survey.photoWidth, survey.photoHeight);
    // The columns of K^-1 H are the sheet's axes and the way to its origin, all in one unit (Zhang 2000).
    const auto& h = survey.projection().toPicture;
    const double cx = survey.frame.middle.x;
    const double cy = survey.frame.middle.y;
    const auto column = [&](std::size_t i) {
        return std::array{(h[i] - cx * h[6 + i]) / focal, (h[3 + i] - cy * h[6 + i]) / focal,
                          h[6 + i]};
    };
    const auto norm = [](const auto& v) { return std::hypot(v[0], v[1], v[2]); };
    const auto x = column(0);
    const auto y = column(1);
    const auto origin = column(2);
    const double unit = std::sqrt(norm(x) * norm(y));
    const std::array across{x[1] * y[2] - x[2] * y[1], x[2] * y[0] - x[0] * y[2],
                            x[0] * y[1] - x[1] * y[0]};
    const double away = across[0] * origin[0] + across[1] * origin[1] + across[2] * origin[2];
    return {std::abs(away) / (norm(across) * unit)};
}

Result<Length> lengthBetween(const Survey& survey, ImagePoint from, ImagePoint to,
                             const LengthOptions& options, const MeasureRules& rules) {
    const auto refuse = [](const char* id) { return fail(Trouble::badInput, {id}); };
    const auto isInside = [&](ImagePoint point) {
        return point.x >= 0 && point.y >= 0 && point.x <= survey.photoWidth &&
               point.y <= survey.photoHeight;
    };
    if (!isInside(from) || !isInside(to)) return refuse("measure.outside");
    const auto projection = survey.projection();
    const auto plain = plainLength(projection, from, to);
    const auto byPlane = planeVariance(survey, from, to);
    const auto byPoints = pointVariance(projection, from, to);
    if (!plain || !byPlane || !byPoints) return refuse("measure.unsure");
    if (!(*plain > 0)) return refuse("measure.samePoint");
    // Seen from the height c, what stands h above the sheet looks larger by c / (c - h).
    const double camera = cameraHeight(survey, rules).value;
    const double raised = options.height.above.value / camera;
    if (!(std::abs(raised) < 0.5)) return refuse("measure.unsure");
    BURROW_TRY(const auto print, agreed(survey, options.print, rules));
    const double factor = print.factor * (1 - raised);
    Length length;
    length.value = {*plain * factor};
    length.deviations.plane = {std::sqrt(*byPlane) * factor};
    length.deviations.points = {std::sqrt(*byPoints) * options.pointDeviation * factor};
    const double byFocal = survey.focal35 ? rules.toldFocalDeviation : rules.unknownFocalDeviation;
    length.deviations.height = {
        *plain * print.factor *
        std::hypot(options.height.deviation.value / camera, raised * byFocal)};
    length.deviations.print = {length.value.value * print.deviation / print.factor};
    length.deviations.sheet = length.value * (rules.curlShare * survey.curl);
    const double half = normal95 * length.deviation().value;
    if (!(length.deviation().value <= rules.mostUnsure * length.value.value)) {
        return refuse("measure.unsure");
    }
    length.low = {std::max(0.0, length.value.value - half)};
    length.high = {length.value.value + half};
    return length;
}

}  // namespace burrow::measure
