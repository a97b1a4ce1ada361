// Finding animals by what a keeper types: a number, any name of the species, the code of a tag, a place,
// or words of a note.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "husbandry/profiles.h"
#include "journal/roster.h"
#include "model/number.h"
#include "room/room.h"
#include "room/snippet.h"
#include "words/words.h"

namespace burrow {

/// Because of what somebody was found, in the order of the list.
enum class FoundBy : std::uint8_t { number, numberStart, species, tag, place, note };
/// "number", "number_start", "species" ...
[[nodiscard]] std::string_view name(FoundBy by);

struct Found {
    SubjectId subject;
    std::string number;
    FoundBy by = FoundBy::note;
    /// The name, code or place that was found, or the piece of the note.
    Snippet what;
    std::optional<EntryId> entry;  ///< whose note it is; nothing for a note on the animal itself
    std::optional<CivilDay> day;   ///< of that entry
};

struct Findings {
    std::vector<Found> found;  ///< the first of them
    std::size_t all = 0;
};

struct SearchOptions {
    std::size_t limit = 200;
    /// What is said before the parts of a place, in small letters: "shelf", "rack", "tub".
    std::vector<std::string> placeWords = {};
};

/// Those of the language: "find.placeWords".
[[nodiscard]] std::vector<std::string> placeWords(const Words& words);

/// More of what is typed is not looked at.
inline constexpr std::size_t longestSearch = 200;

/// Everyone with each of the words typed, in any order and anywhere among its number, the names of its
/// species, its place and its notes; of the last word the start is enough. Whoever has just that number,
/// that species ("B. hamorii", an old name) or that tag is found too. What is typed is taken for words
/// whatever it holds.
///
/// Sorted by what was found, the farthest-fetched of its words: those still kept first, then by number. Of
/// a single letter or digit beside other words only the whole counts, and in notes always. A word that
/// stands in more texts than anyone could read is looked for in those written last.
Result<Findings> search(Book& book, const Profiles& profiles, std::string_view typed,
                        const SearchOptions& options = {});

/// Those in the room with that number, as subjectsNumbered() finds them in the book.
[[nodiscard]] std::vector<ResidentPtr> numbered(const Room& room, std::string_view number);

}  // namespace burrow
