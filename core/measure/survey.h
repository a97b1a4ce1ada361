// What a photo says about the plane that it shows: the mat, or a single tag of an enclosure, and how
// sure that is. This is where a photo that cannot be measured is refused, in words.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "base/result.h"
#include "measure/edge_fit.h"
#include "measure/mat.h"
#include "measure/rules.h"
#include "pictures/raster.h"

namespace burrow::measure {

enum class ScaleKind { mat, tag };

/// How large an enclosure's tag on the mat came out.
struct TagBeside {
    std::string code;
    double ratio = 1;  ///< its side as the mat has it, over the side that it tells
};

struct Survey {
    ScaleKind scale = ScaleKind::mat;
    std::optional<MatMark> mat;       ///< one of its squares
    std::optional<std::string> code;  ///< of the only enclosure's tag in view
    std::vector<std::string> codes;   ///< of all of them
    std::optional<TagBeside> beside;  ///< of a tag that lies on the mat's place for it
    FitFrame frame;
    Parameters parameters{};
    std::array<double, parameterCount * parameterCount> covariance{};
    bool hasRadial = false;  ///< whether the lens bends the picture beyond what chance would
    double residual = 0;     ///< root mean square over the edges, pixels
    double bend = 0;         ///< by what factor the squares disagree beyond their noise
    double curl = 0;         ///< mm by which a sheet that is not flat shows its squares elsewhere
    MatPoint middle;         ///< of what the scale was taken from
    double pixelsPerMm = 0;  ///< there, in the direction that shows less
    int photoWidth = 0;
    int photoHeight = 0;
    /// Of the camera's lens, mm as on 36 by 24 mm film, where whoever read the file knows it (EXIF).
    std::optional<double> focal35;

    [[nodiscard]] Projection projection() const { return projectionOf(parameters, frame); }
};

/// Fails with `badInput` and a sentence where the photo shows no whole mat and no tag, is mirrored,
/// shows two mats, is too tilted, blurred, dim or small, shows a screen, or a sheet that is not flat.
/// With a tag the plane is the one in which the tag lies. Of several tags without a mat, `near` says
/// which.
[[nodiscard]] Result<Survey> survey(const pictures::Raster& photo,
                                    std::optional<ImagePoint> near = std::nullopt,
                                    const MeasureRules& rules = shippedRules());

}  // namespace burrow::measure
