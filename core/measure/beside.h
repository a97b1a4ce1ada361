// An enclosure's tag on its place of a mat says how large it was printed. Where the mat makes it another
// size, one of the two is a copy of a size of its own.
#pragma once

#include <optional>
#include <vector>

#include "base/message.h"
#include "base/result.h"
#include "measure/find.h"
#include "measure/survey.h"

namespace burrow::measure {

/// Of the first tag that lies within the mat's place for it: there it is flat. Others may stand higher, and
/// look larger for that alone. Nothing where there is none, or its edges cannot be told.
[[nodiscard]] std::optional<TagBeside> tagBeside(const pictures::Raster& photo,
                                                 const Survey& survey,
                                                 const std::vector<FoundTag>& tags);

/// By how much things on the mat would be larger than `print` says if the tag has the size that it tells:
/// 0.03 for a mat copied at 97 percent whose bar was measured before it was copied.
[[nodiscard]] double copiedBy(const Survey& survey, const PrintScale& print);

/// The printer's scale as far as the tag bears it out. A disagreement that a printer of tags may be to blame
/// for stays as it is; beyond it, it is a part of how unsure the scale is. Fails with `badInput` where no two
/// printers disagree so much.
[[nodiscard]] Result<PrintScale> agreed(const Survey& survey, const PrintScale& print,
                                        const MeasureRules& rules = shippedRules());

/// What to say of a disagreement that widens the interval; nothing where there is none.
[[nodiscard]] std::optional<Message> copyWarning(const Survey& survey, const PrintScale& print,
                                                 const MeasureRules& rules = shippedRules());

}  // namespace burrow::measure
