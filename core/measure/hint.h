// What to tell somebody who holds a camera over a mat, from one frame after the other.
#pragma once

#include <array>

#include "base/message.h"
#include "measure/mat.h"
#include "measure/rules.h"
#include "tags/symbol.h"

namespace burrow::measure {

enum class Hint {
    noMat,    ///< no square can be read
    corners,  ///< some can, not all
    twoMats,
    mirrored,  ///< a front camera that shows a mirror image
    tilted,
    blurred,  ///< moving, or not in focus
    dim,
    far,  ///< the mat fills too little of the picture
    ready
};

struct LiveHint {
    Hint hint = Hint::noMat;
    std::array<bool, 4> isSeen{};  ///< of the corners, by MatCorner
    /// Where each seen square is in the frame: top left, top right, bottom right, bottom left.
    std::array<std::array<ImagePoint, 4>, 4> squares{};
    double level = 0;      ///< 1 is looking straight down; 0 where it is not known
    double sharpness = 0;  ///< 1 is as steep as edges get, 0 is none

    /// What to say, with its arguments: "measure.hint.corners" and so on.
    [[nodiscard]] Message message() const;
};

/// A frame of 720 lines takes a few milliseconds. A still picture may see more than the frame does, so
/// this guides and does not decide. Keeps nothing; safe from any thread.
[[nodiscard]] LiveHint hintFor(const tags::LumaView& frame,
                               const MeasureRules& rules = shippedRules());

}  // namespace burrow::measure
