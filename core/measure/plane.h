// The plane of a mat and its photo: points, the homography between the two, and one radial term for the
// lens. Plain values and pure functions; safe from any thread.
#pragma once

#include <array>
#include <optional>

#include "base/units.h"
#include "tags/symbol.h"

namespace burrow::measure {

/// A point of the photo as it is stored, before any EXIF turn: pixels, x to the right and y down; the
/// middle of the top left pixel is (0.5, 0.5).
using tags::ImagePoint;

/// A point of the printed sheet, from its top left corner.
struct MatPoint {
    Millimetres x;
    Millimetres y;

    friend bool operator==(const MatPoint&, const MatPoint&) = default;
};

/// Parallel to the sheet's edges.
struct MatBox {
    Millimetres x;
    Millimetres y;
    Millimetres width;
    Millimetres height;

    [[nodiscard]] constexpr MatPoint centre() const { return {x + 0.5 * width, y + 0.5 * height}; }
    friend bool operator==(const MatBox&, const MatBox&) = default;
};

/// A 3 by 3 matrix by rows that maps points of one plane to another; its last element is 1 wherever
/// the functions here make one.
using Homography = std::array<double, 9>;

/// Homogeneous division included; infinite where the point lies on the horizon.
[[nodiscard]] ImagePoint mapped(const Homography& h, ImagePoint point);
[[nodiscard]] Homography product(const Homography& a, const Homography& b);
/// Nothing for a matrix that has no inverse.
[[nodiscard]] std::optional<Homography> inverse(const Homography& h);

/// Radial distortion with one term: a point at the distance r of the centre is seen at
/// r (1 + k (r / radius)^2). That is k1 of Brown (1966), with lengths in units of `radius`.
struct Radial {
    ImagePoint centre;
    double radius = 1;  ///< half the diagonal of the photo
    double k = 0;       ///< below zero for a barrel

    /// About the middle of a photo of this size.
    [[nodiscard]] static Radial about(int width, int height, double k = 0);
};

[[nodiscard]] ImagePoint distorted(const Radial& radial, ImagePoint straight);
/// The inverse, by Newton's method, to 1e-10 of a pixel. Nothing where the lens folds the picture over.
[[nodiscard]] std::optional<ImagePoint> undistorted(const Radial& radial, ImagePoint seen);

/// From the sheet to the photo.
struct Projection {
    Homography toPicture{1, 0, 0, 0, 1, 0, 0, 0, 1};  ///< millimetres to pixels of a straight lens
    Radial radial;
};

[[nodiscard]] ImagePoint photoOf(const Projection& projection, MatPoint point);
/// Nothing for a point that shows nothing of the sheet's plane.
[[nodiscard]] std::optional<MatPoint> matOf(const Projection& projection, ImagePoint point);

/// How the photo stretches the sheet at a point, as singular values of the projection's derivative.
struct Stretch {
    double most = 0;  ///< pixels per millimetre, in the direction that shows the most
    double least = 0;
    bool isMirrored = false;
};
[[nodiscard]] Stretch stretchAt(const Projection& projection, MatPoint point);

}  // namespace burrow::measure
