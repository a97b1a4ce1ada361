// The sheet's plane as a picture of its own: so many pixels to a millimetre, whatever the camera saw.
#pragma once

#include "base/result.h"
#include "measure/light.h"
#include "measure/mat.h"
#include "measure/survey.h"
#include "pictures/raster.h"

namespace burrow::measure {

struct FlattenOptions {
    double pixelsPerMm = 20;  ///< of the real sheet, as `print` says
    /// Of the sheet as it was meant to be printed; the whole mat, or 60 mm around a tag.
    std::optional<MatBox> region;
    Balance balance = Balance::none();
    PrintScale print;
};

/// A photo and its result are held together: that many pixels in all, of three bytes each.
inline constexpr double mostPixelsHeld = 75e6;

/// The largest whole scale at which the result is not too large beside the photo; 0 for none.
[[nodiscard]] double largestScale(const Survey& survey, const FlattenOptions& options = {});

/// Between pixels by straight lines, and by the mean over the area where the photo is finer than the
/// result. What lies outside of the photo is white. Works in two threads. Fails with `badInput` for a
/// scale that is none, or a result that is too large beside the photo.
[[nodiscard]] Result<pictures::Raster> flatten(const pictures::Raster& photo, const Survey& survey,
                                               const FlattenOptions& options = {});

}  // namespace burrow::measure
