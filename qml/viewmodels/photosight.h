// What a photo of a moult says by itself: whose tag lies in it, and whether it can be measured.
#pragma once

#include <span>

#include "measure/survey.h"
#include "pictures/raster.h"

namespace burrow {

struct PhotoSight {
    std::vector<std::string> codes;  ///< of enclosures' tags in view, each once
    std::optional<measure::Survey> survey;
    Message trouble;  ///< why it can't be measured; an empty id where it can
};

/// Takes about as long as decoding the photo does; safe from any thread. A photo that can't be measured
/// is no failure: it is kept, and its lengths can be typed.
[[nodiscard]] PhotoSight sightOf(const pictures::Raster& photo, const measure::MeasureRules& rules);
/// The same of a file's bytes; a picture that can't be decoded says why.
[[nodiscard]] PhotoSight sightOf(std::span<const std::uint8_t> bytes,
                                 const measure::MeasureRules& rules);

}  // namespace burrow
