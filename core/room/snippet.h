// The piece of a text in which a word was found.
#pragma once

#include <functional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

#include "storage/word_splitter.h"

namespace burrow {

/// A piece of a text, and what of it was looked for.
struct Snippet {
    std::string text;
    std::vector<std::pair<std::size_t, std::size_t>> marks;  ///< bytes [from, to), in order
};

/// About so many bytes of a note are shown.
inline constexpr std::size_t usualSnippet = 90;

/// From a few words before the first one that is wanted, in one line, without what would steer whoever
/// shows it; "…" where something was left out. `isWanted` is given words without case and accents.
[[nodiscard]] Snippet snippetOf(std::string_view text, const storage::WordSplitter& splitter,
                                const std::function<bool(std::string_view)>& isWanted,
                                std::size_t longest = usualSnippet);

}  // namespace burrow
