// Whether a picture as a whole is blurred, asked only to find the right words for a photo in which
// nothing could be read.
#pragma once

#include "measure/find.h"
#include "measure/rules.h"

namespace burrow::measure {

/// Compares the steepest steps from one pixel to the next with those over eight pixels: of sharp
/// edges both are alike.
[[nodiscard]] bool looksBlurred(const GreyCopy& picture,
                                const MeasureRules& rules = shippedRules());

}  // namespace burrow::measure
