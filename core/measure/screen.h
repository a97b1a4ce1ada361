// Whether a mat was photographed from a screen, where its scale is anybody's guess: a screen's grid shows
// as a wave on what should be blank paper. One that is too fine for the camera cannot be told, nor one whose
// dots are larger than 16 pixels of the photo, or fall on JPEG's blocks of eight along its edges. Photos of a
// tag alone are not asked: nothing says where the paper around a tag is blank.
#pragma once

#include "measure/survey.h"
#include "pictures/raster.h"

namespace burrow::measure {

/// The strongest regular wave on a patch of blank paper.
struct Wave {
    double amplitude = 0;  ///< of 255
    double clarity = 0;    ///< its power over the median power of all waves
};
/// Of the square of `side` pixels about a point; green, without its mean and slope, by a discrete
/// Fourier transform under Hann's window. Waves longer than a quarter of the square, and those of
/// JPEG's blocks, do not count.
[[nodiscard]] Wave strongestWave(const pictures::Raster& photo, ImagePoint centre, int side);

[[nodiscard]] bool showsScreen(const pictures::Raster& photo, const Survey& survey,
                               const MeasureRules& rules = shippedRules());

}  // namespace burrow::measure
