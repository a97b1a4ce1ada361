// The words of all that is written in a book: numbers, places, where animals are from, and notes. Kept by
// the projector in step with the journal; a rebuild gives the same rows.
#pragma once

#include <cstdint>
#include <string>
#include <string_view>
#include <vector>

#include "base/ids.h"
#include "base/units.h"
#include "storage/sqlite.h"

namespace burrow {

enum class TextOf : std::uint8_t { subject, enclosure, fact };

/// The texts of one thing. What is empty is not there.
struct Searchable {
    TextOf kind = TextOf::fact;
    Uuid origin;   ///< the thing itself, or the entry of the fact
    Uuid about;    ///< the subject or enclosure that it is about: itself where it is no fact
    Instant at{};  ///< when the fact happened; 0 for others
    std::string_view number;
    std::string_view place;
    std::string_view source;
    std::string_view note;
};

/// Writing it: for the projector, inside its transaction.
class WordIndex {
public:
    explicit WordIndex(storage::Connection& connection) : connection_(connection) {}

    Done put(const Searchable& text);
    Done remove(TextOf kind, const Uuid& origin);

    /// Empties it. What is put in from here on is found after finishRefilling().
    Done startRefilling();
    Done finishRefilling();

private:
    Done unindex(std::int64_t n);
    Done index(std::int64_t n, const Searchable& text);

    storage::Connection& connection_;
    bool isRefilling_ = false;
};

/// Fails with `corrupt` where the index does not say what the texts say. Writes, so not on a book that is
/// only read.
Done checkWordIndex(storage::Connection& connection);

/// The parts of a text that are looked through each by itself.
enum class TextPart : std::uint8_t { number, place, note /* and the source */ };

/// A text in which a word stands.
struct WordHit {
    std::int64_t n = 0;  ///< for noteText()
    TextOf kind = TextOf::fact;
    Uuid origin;
    Uuid about;
    Instant at;
};

/// The texts with that word in that part, or with one that starts so, those written last first. `word` is
/// one word as WordSplitter finds it, in any case.
Result<std::vector<WordHit>> textsWith(storage::Connection& connection, TextPart part,
                                       std::string_view word, bool isStart, int limit);

struct NoteText {
    std::string note;
    std::string source;
};
Result<NoteText> noteText(storage::Connection& connection, std::int64_t n);

}  // namespace burrow
