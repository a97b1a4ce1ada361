// A sheet that does not lie flat: bent over a cylinder, as paper bends, so that lengths on it stay as they
// are. Where its places stand, and where a camera sees them. No Qt.
#pragma once

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>

#include "measure/plane.h"

namespace burrow::test {

using measure::ImagePoint;
using measure::MatPoint;

enum class CurlShape {
    arch,    ///< the middle stands up, two opposite edges lie on the table
    trough,  ///< the middle lies on the table, two opposite edges stand up
    edge,    ///< one half lies on the table, the other bends up towards its edge
};

struct Curl {
    double lift = 0;       ///< mm: how high the highest place stands; 0 for a flat sheet
    double direction = 0;  ///< degrees: across the bend, from the sheet's x axis towards its y axis
    CurlShape shape = CurlShape::arch;
};

/// A curled sheet before a camera that looks at its plane.
class CurledSheet {
public:
    struct Place {
        double x, y;   ///< mm, straight below
        double above;  ///< mm
    };

    /// The camera is `focal` pixels long, and its line of sight meets the photo in the middle.
    CurledSheet(const Curl& curl, double width, double height, const measure::Projection& camera,
                double focal)
        : curl_(curl), middleX_(0.5 * width), middleY_(0.5 * height), camera_(camera) {
        const double angle = curl.direction * std::numbers::pi / 180;
        alongX_ = std::cos(angle);
        alongY_ = std::sin(angle);
        const double reach = std::abs(middleX_ * alongX_) + std::abs(middleY_ * alongY_);
        // The smaller the cylinder the higher the end: the radius at which it is as high as asked for.
        double small = reach / std::numbers::pi, large = 1e7;
        for (int i = 0; i < 100; ++i) {
            radius_ = std::sqrt(small * large);
            (rise(reach) > curl.lift ? small : large) = radius_;
        }
        stand(focal);
    }

    /// Where a printed point of the sheet stands.
    [[nodiscard]] Place placeOf(MatPoint printed) const {
        const double x = printed.x.value - middleX_, y = printed.y.value - middleY_;
        const double u = x * alongX_ + y * alongY_;
        const double by = isBent(u) ? radius_ * std::sin(u / radius_) - u : 0;
        return {printed.x.value + by * alongX_, printed.y.value + by * alongY_, above(u)};
    }
    [[nodiscard]] ImagePoint photoOf(MatPoint printed) const {
        const auto place = placeOf(printed);
        const double far = distance_ / (distance_ - place.above);
        return measure::photoOf(camera_, {{cameraX_ + far * (place.x - cameraX_)},
                                          {cameraY_ + far * (place.y - cameraY_)}});
    }
    /// The printed point that hides the point of the plane: how high the line of sight meets the sheet is
    /// found by turns, since sheets are steep nowhere.
    [[nodiscard]] MatPoint printedAt(MatPoint plane) const {
        double up = 0, x = 0, y = 0, u = 0;
        for (int i = 0; i < 40; ++i) {
            x = plane.x.value + (cameraX_ - plane.x.value) * up / distance_;
            y = plane.y.value + (cameraY_ - plane.y.value) * up / distance_;
            u = unrolled((x - middleX_) * alongX_ + (y - middleY_) * alongY_);
            const double before = up;
            up = above(u);
            if (std::abs(up - before) < 1e-9) break;
        }
        const double by = u - ((x - middleX_) * alongX_ + (y - middleY_) * alongY_);
        return {{x + by * alongX_}, {y + by * alongY_}};
    }
    /// Straight through the air.
    [[nodiscard]] double between(MatPoint a, MatPoint b) const {
        const auto p = placeOf(a), q = placeOf(b);
        return std::hypot(p.x - q.x, p.y - q.y, p.above - q.above);
    }

private:
    [[nodiscard]] bool isBent(double u) const {
        return curl_.lift > 0 && (curl_.shape != CurlShape::edge || u > 0);
    }
    [[nodiscard]] double rise(double u) const {
        return radius_ * (1 - std::cos(std::clamp(u / radius_, -3.0, 3.0)));
    }
    [[nodiscard]] double above(double u) const {
        const double risen = isBent(u) ? rise(u) : 0;
        return curl_.shape == CurlShape::arch ? curl_.lift - risen : risen;
    }
    /// The way along the paper to what is so far from its middle.
    [[nodiscard]] double unrolled(double level) const {
        if (!isBent(level)) return level;
        return radius_ * std::asin(std::clamp(level / radius_, -1.0, 1.0));
    }
    /// Where the camera stands over the sheet. The columns of K^-1 H are the sheet's axes and the way to
    /// its origin, all in one unit (Zhang 2000).
    void stand(double focal) {
        const auto& h = camera_.toPicture;
        const auto column = [&](std::size_t i) {
            return std::array{(h[i] - camera_.radial.centre.x * h[6 + i]) / focal,
                              (h[3 + i] - camera_.radial.centre.y * h[6 + i]) / focal, h[6 + i]};
        };
        const auto dot = [](const auto& a, const auto& b) {
            return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
        };
        const auto x = column(0), y = column(1), origin = column(2);
        const std::array across{x[1] * y[2] - x[2] * y[1], x[2] * y[0] - x[0] * y[2],
                                x[0] * y[1] - x[1] * y[0]};
        const double square = dot(x, x);
        cameraX_ = -dot(x, origin) / square;
        cameraY_ = -dot(y, origin) / square;
        distance_ = dot(across, origin) / (square * std::sqrt(square));
    }

    Curl curl_;
    double middleX_, middleY_;
    measure::Projection camera_;
    double alongX_ = 1, alongY_ = 0;
    double radius_ = 0;
    double cameraX_ = 0, cameraY_ = 0, distance_ = 0;
};

}  // namespace burrow::test
