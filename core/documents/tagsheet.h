// Sheets of tags to cut out: 62 by 29 mm each, three abreast, with a bar of 50 mm that shows
// whether the printer kept to scale. The square on a tag holds only its code, never what may
// change.
#pragma once

#include <span>
#include <string>
#include <vector>

#include "base/result.h"
#include "documents/fit.h"
#include "documents/page.h"
#include "model/profile.h"
#include "model/terms.h"
#include "words/words.h"

namespace burrow::documents {

/// Printed side of the square on every tag and sheet; 25 modules of 0.8 mm.
inline constexpr Millimetres symbolSide{20};

/// What stands on the tag of one subject.
struct TagLabel {
    std::string code;    ///< as tags::isCode accepts it
    std::string number;  ///< "214"
    std::string species;
    Form form = Form::animal;
    Sex sex = Sex::unknown;
    std::vector<Caution> cautions;  ///< gravest first
};

/// As many pages as the labels need, none for none. Fails with `badInput` for a code that is none.
[[nodiscard]] Result<std::vector<Page>> tagSheets(std::string_view room, Paper paper,
                                                  std::span<const TagLabel> labels,
                                                  const Words& words, const TextMeasure& measure);

/// Blank stock: tags with a line to write on and their code in groups, to be given to a subject at
/// their first scan.
[[nodiscard]] Result<std::vector<Page>> blankTagSheets(std::string_view room, Paper paper,
                                                       std::span<const std::string> codes,
                                                       const Words& words,
                                                       const TextMeasure& measure);

}  // namespace burrow::documents
