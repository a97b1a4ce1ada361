#include "room/snippet.h"

#include <algorithm>

#include "base/text.h"

namespace burrow {
namespace {

constexpr std::size_t wordsBefore = 4;
/// What has no gap for so long is cut wherever that is.
constexpr std::size_t longestWord = 200;

std::string oneLine(std::string_view text) {
    auto line = withoutSteering(text);
    std::replace(line.begin(), line.end(), '\n', ' ');
    return line;
}

/// The greatest end of at most `end` that is not within a character.
std::size_t characterEnd(std::string_view text, std::size_t end) {
    const auto isInside = [&](std::size_t at) {
        return at < text.size() && (static_cast<unsigned char>(text[at]) & 0xC0U) == 0x80;
    };
    while (end > 0 && isInside(end)) --end;
    return end;
}

}  // namespace

Snippet snippetOf(std::string_view text, const storage::WordSplitter& splitter,
                  const std::function<bool(std::string_view)>& isWanted, std::size_t longest) {
    const auto line = oneLine(text);
    const auto words = splitter.split(line);
    const auto first = std::find_if(words.begin(), words.end(),
                                    [&](const auto& word) { return isWanted(word.folded); });
    std::size_t from = 0;
    std::size_t to = line.size();
    if (line.size() > longest && !words.empty()) {
        auto at =
            first == words.end() ? std::size_t{0} : static_cast<std::size_t>(first - words.begin());
        const auto wanted = at;
        at -= std::min(at, wordsBefore);
        while (at < wanted && words[wanted].begin - words[at].begin > longest / 2) ++at;
        from = at == 0 ? 0 : words[at].begin;
        // Always the whole of the word that was found.
        to = words[wanted].end;
        for (auto next = wanted; next < words.size() && words[next].end - from <= longest; ++next) {
            to = words[next].end;
        }
        if (words.back().end == to) to = line.size();
        to = characterEnd(line, std::min(to, from + longest + longestWord));
    }
    Snippet snippet;
    const std::string_view left = from > 0 ? "…" : "";
    snippet.text = std::string(left) + line.substr(from, to - from) + (to < line.size() ? "…" : "");
    for (const auto& word : words) {
        if (word.begin < from || word.end > to || !isWanted(word.folded)) continue;
        snippet.marks.emplace_back(word.begin - from + left.size(), word.end - from + left.size());
    }
    return snippet;
}

}  // namespace burrow
