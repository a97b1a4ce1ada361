// The sheet's plane as a picture of its own: so many pixels to a millimetre, whatever the camera saw.
#pragma once

#include "base/result.h"
#include "measure/light.h"
#include "measure/survey.h"
#include "pictures/raster.h"

namespace burrow::measure {

struct FlattenOptions {
    double pixelsPerMm = 20;
    std::optional<MatBox> region;  ///< of the sheet; the whole mat, or 60 mm around a tag
    Balance balance = Balance::none();
};

/// Between pixels by straight lines, and by the mean over the area where the photo is finer than the
/// result. What lies outside of the photo is white. Works in two threads. Fails with `badInput` for a
/// scale that is none, or a result of more than 64 megapixels.
[[nodiscard]] Result<pictures::Raster> flatten(const pictures::Raster& photo, const Survey& survey,
                                               const FlattenOptions& options = {});

}  // namespace burrow::measure
