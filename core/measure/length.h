// Lengths on the surveyed plane, each with the interval in which it lies with 95 percent.
#pragma once

#include "base/result.h"
#include "measure/mat.h"
#include "measure/survey.h"

namespace burrow::measure {

/// How far what is measured stands above the sheet. What is nearer to the camera looks larger.
struct Height {
    Millimetres above{0};
    Millimetres deviation{0};  ///< standard deviation of it
};

struct LengthOptions {
    /// Standard deviation of either coordinate of a point as it was set, in pixels of the photo.
    double pointDeviation = 0;
    Height height;
    PrintScale print;
};

/// Where the uncertainty comes from, as standard deviations.
struct LengthDeviations {
    Millimetres plane;   ///< the edges that were found, and the lens
    Millimetres points;  ///< the two points
    Millimetres height;  ///< how high it lies, and how far away the camera was
    Millimetres print;   ///< the printer's scale
    Millimetres sheet;   ///< how flat it lay
};

struct Length {
    Millimetres value;
    Millimetres low;  ///< of the 95 percent interval
    Millimetres high;
    LengthDeviations deviations;

    [[nodiscard]] Millimetres deviation() const;
};

/// The straight line between two points of the photo. Fails with `badInput` where a point is outside of
/// the photo, both are the same, the photo says so little there that a quarter of the length is
/// uncertain, or a tag on the mat says that the sheet is another size than `print` has it.
[[nodiscard]] Result<Length> lengthBetween(const Survey& survey, ImagePoint from, ImagePoint to,
                                           const LengthOptions& options = {},
                                           const MeasureRules& rules = shippedRules());

/// How far the camera was above the sheet. The photo says it up to the camera's angle of view: that of the
/// survey's `focal35`, by the diagonal of the picture and of film (36 by 24 mm), or of the usual lens.
[[nodiscard]] Millimetres cameraHeight(const Survey& survey,
                                       const MeasureRules& rules = shippedRules());

}  // namespace burrow::measure
