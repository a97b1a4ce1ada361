// The mat on which moults are photographed, as a page.
#pragma once

#include "base/result.h"
#include "documents/fit.h"
#include "documents/page.h"
#include "measure/mat.h"
#include "words/words.h"

namespace burrow::documents {

/// Fails with `badInput` for a name that is none.
[[nodiscard]] Result<Page> matPage(measure::MatPaper paper, const measure::MatName& name,
                                   const Words& words, const TextMeasure& measure);

}  // namespace burrow::documents
