// The moult line in print: time runs along it, a tick for every moult as high as the animal was
// large, hatched while it hardened, dots below for feedings, a ring where the sheet was made.
#pragma once

#include <optional>
#include <vector>

#include "documents/fit.h"
#include "documents/page.h"
#include "model/digest.h"
#include "words/words.h"

namespace burrow::documents {

struct MoultLine {
    std::optional<CivilDay> hatched;
    std::optional<CivilDay> acquired;
    std::vector<MoultMark> moults;  ///< in any order
    std::vector<Meal> meals;  ///< in any order; what was left in and not looked for is not drawn
    int hardeningDays = 0;
    CivilDay end;  ///< where the ring stands; what is later is not drawn
    bool sold = false;
};

/// Needs a box 19 mm high.
void addMoultLine(Page& page, const MoultLine& line, const Box& box, const Words& words,
                  const TextMeasure& measure);

}  // namespace burrow::documents
