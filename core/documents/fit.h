// Makes text fit the place it has on a page: smaller first, then over several lines, and only then
// shortened.
#pragma once

#include <string_view>
#include <vector>

#include "documents/page.h"

namespace burrow::documents {

/// How wide a text is when drawn; a port, because only whoever draws knows the fonts.
class TextMeasure {
public:
    virtual ~TextMeasure() = default;
    [[nodiscard]] virtual Millimetres width(std::string_view text,
                                            const TextStyle& style) const = 0;
};

/// The text on one line no wider than its room, set smaller where it must be, but not under
/// `least`; what is too long even then ends in "…". Line breaks and control characters become
/// spaces.
[[nodiscard]] Text fitLine(const TextMeasure& measure, Text text, Points least);

/// One line where that is possible down to `least`; otherwise up to `most` lines, one `pitch` below
/// the other and broken at spaces, in the largest size that does it and is no higher than the
/// pitch.
[[nodiscard]] std::vector<Text> fitLines(const TextMeasure& measure, const Text& text, Points least,
                                         std::size_t most, Millimetres pitch);

}  // namespace burrow::documents
