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

/// An entry as it stands in the journal. Texts are valid until the next row.
struct StoredEntry {
    std::int64_t n = 0;  ///< order of arrival in this file
    EntryId id;
    DeviceId device;
    std::int64_t seq = 0;
    std::int64_t act = 0;
    std::int64_t hlc = 0;
    std::string_view kind;
    std::optional<Uuid> thing;
    std::string_view body;  ///< a JSON object
    Instant recordedAt;
    Instant happenedAt;
    CivilDay day;
    std::string_view zone;

    [[nodiscard]] Entry toEntry() const;
};

/// The columns of a StoredEntry, from `entry e JOIN device d`.
#define BURROW_ENTRY_COLUMNS                                                         \
    "e.n, e.id, d.id, e.seq, e.act, e.hlc, e.kind, e.thing, e.body, e.recorded_at, " \
    "e.happened_at, "                                                                \
    "e.day, e.zone FROM entry e JOIN device d ON d.ref = e.device "
[[nodiscard]] StoredEntry storedEntryAt(const storage::Query& row);

/// Appends an entry to the journal; `body` is its body as text, `device` the row of its device.
Done insertEntry(storage::Connection& connection, const Entry& entry, std::int64_t device,
                 std::string_view body);

/// At most `count` entries that arrived after number `after`, with their numbers.
Result<std::vector<std::pair<std::int64_t, Entry>>> entriesAfter(storage::Connection& connection,
                                                                 std::int64_t after, int count);

/// The fact of a row of (entry, subject, kind, day, happened_at, hlc, body); nothing for a kind or a
/// body that this version cannot read.
[[nodiscard]] std::optional<Fact> factAt(const storage::Query& row);

}  // namespace burrow
