// Reading rows of a book into records.
#pragma once

#include <utility>

#include "journal/entry.h"
#include "storage/sqlite.h"

namespace burrow {

/// All zeros where the column does not hold 16 bytes.
[[nodiscard]] Uuid uuidAt(const storage::Query& row, int column);
[[nodiscard]] std::optional<Uuid> maybeUuidAt(const storage::Query& row, int column);
[[nodiscard]] std::optional<CivilDay> maybeDayAt(const storage::Query& row, int column);

/// At most `count` entries that arrived after number `after`, with their numbers.
Result<std::vector<std::pair<std::int64_t, Entry>>> entriesAfter(storage::Connection& connection,
                                                                 std::int64_t after, int count);

/// The fact of a row of (entry, subject, kind, day, happened_at, hlc, body); nothing for a kind or a
/// body that this version cannot read.
[[nodiscard]] std::optional<Fact> factAt(const storage::Query& row);

}  // namespace burrow
