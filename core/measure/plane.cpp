#include "measure/plane.h"

#include <cmath>

namespace burrow::measure {

ImagePoint mapped(const Homography& h, ImagePoint point) {
    const double w = h[6] * point.x + h[7] * point.y + h[8];
    return {(h[0] * point.x + h[1] * point.y + h[2]) / w,
            (h[3] * point.x + h[4] * point.y + h[5]) / w};
}

Homography product(const Homography& a, const Homography& b) {
    Homography result{};
    for (std::size_t row = 0; row < 3; ++row) {
        for (std::size_t column = 0; column < 3; ++column) {
            for (std::size_t i = 0; i < 3; ++i) {
                result[row * 3 + column] += a[row * 3 + i] * b[i * 3 + column];
            }
        }
    }
    return result;
}

std::optional<Homography> inverse(const Homography& h) {
    const Homography adjugate{
        h[4] * h[8] - h[5] * h[7], h[2] * h[7] - h[1] * h[8], h[1] * h[5] - h[2] * h[4],
        h[5] * h[6] - h[3] * h[8], h[0] * h[8] - h[2] * h[6], h[2] * h[3] - h[0] * h[5],
        h[3] * h[7] - h[4] * h[6], h[1] * h[6] - h[0] * h[7], h[0] * h[4] - h[1] * h[3]};
    const double determinant = h[0] * adjugate[0] + h[1] * adjugate[3] + h[2] * adjugate[6];
    const double last = adjugate[8];
    if (!std::isnormal(determinant) || !std::isnormal(last)) return std::nullopt;
    Homography result = adjugate;
    for (auto& value : result) value /= last;
    return result;
}

Radial Radial::about(int width, int height, double k) {
    return {{0.5 * width, 0.5 * height}, 0.5 * std::hypot(width, height), k};
}

ImagePoint distorted(const Radial& radial, ImagePoint straight) {
    const double x = straight.x - radial.centre.x;
    const double y = straight.y - radial.centre.y;
    const double factor = 1 + radial.k * (x * x + y * y) / (radial.radius * radial.radius);
    return {radial.centre.x + factor * x, radial.centre.y + factor * y};
}

std::optional<ImagePoint> undistorted(const Radial& radial, ImagePoint seen) {
    const double x = seen.x - radial.centre.x;
    const double y = seen.y - radial.centre.y;
    const double wanted = std::hypot(x, y) / radial.radius;
    if (wanted == 0 || radial.k == 0) return seen;
    double r = wanted;
    constexpr int mostSteps = 50;
    for (int step = 0; step < mostSteps; ++step) {
        const double slope = 1 + 3 * radial.k * r * r;
        if (slope <= 0) return std::nullopt;
        const double change = (r * (1 + radial.k * r * r) - wanted) / slope;
        r -= change;
        if (std::abs(change) * radial.radius < 1e-11) {
            const double factor = r / wanted;
            return ImagePoint{radial.centre.x + factor * x, radial.centre.y + factor * y};
        }
    }
    return std::nullopt;
}

ImagePoint photoOf(const Projection& projection, MatPoint point) {
    return distorted(projection.radial,
                     mapped(projection.toPicture, {point.x.value, point.y.value}));
}

std::optional<MatPoint> matOf(const Projection& projection, ImagePoint point) {
    const auto straight = undistorted(projection.radial, point);
    const auto back = inverse(projection.toPicture);
    if (!straight || !back) return std::nullopt;
    const auto at = mapped(*back, *straight);
    // Behind the camera the denominator changes its sign.
    const auto& h = projection.toPicture;
    const double w = h[6] * at.x + h[7] * at.y + h[8];
    if (!std::isfinite(at.x) || !std::isfinite(at.y) || w <= 0) return std::nullopt;
    return MatPoint{{at.x}, {at.y}};
}

Stretch stretchAt(const Projection& projection, MatPoint point) {
    constexpr double step = 1e-3;  // mm: far above rounding, far below any bend
    const auto difference = [&](double dx, double dy) {
        const auto after = photoOf(projection, {{point.x.value + dx}, {point.y.value + dy}});
        const auto before = photoOf(projection, {{point.x.value - dx}, {point.y.value - dy}});
        return ImagePoint{(after.x - before.x) / (2 * step), (after.y - before.y) / (2 * step)};
    };
    const auto x = difference(step, 0);
    const auto y = difference(0, step);
    const double determinant = x.x * y.y - x.y * y.x;
    const double sum = x.x * x.x + x.y * x.y + y.x * y.x + y.y * y.y;
    const double root = std::sqrt(std::max(0.0, sum * sum - 4 * determinant * determinant));
    return {std::sqrt(0.5 * (sum + root)), std::sqrt(std::max(0.0, 0.5 * (sum - root))),
            determinant < 0};
}

}  // namespace burrow::measure
