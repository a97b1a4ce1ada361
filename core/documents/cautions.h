// How a caution is printed: a triangle and words, white on black for what can put a person in
// hospital or bolt, outlined for the rest.
#pragma once

#include "documents/page.h"
#include "model/profile.h"
#include "words/words.h"

namespace burrow::documents {

/// White on black: strong venom, sting, fast. Outlined: hairs, spray, and venom that is only notable.
[[nodiscard]] bool isReversed(Caution caution);

/// The word on a tag: "fast".
[[nodiscard]] std::string cautionWord(Caution caution, const Words& words);
/// The heading of its box on a care sheet, which says where to go when it has happened.
[[nodiscard]] std::string cautionHeading(Caution caution, const Words& words);
/// What to do so that it does not happen.
[[nodiscard]] std::string cautionAdvice(Caution caution, const Words& words);

/// The box of a caution and its sign; the words are for the caller to add.
void addCautionBox(Page& page, Caution caution, const Box& box, const Box& sign, Millimetres edge);

/// What words in the box of this caution are written with.
[[nodiscard]] Ink cautionInk(Caution caution);

}  // namespace burrow::documents
