#include "journal/rows.h"

#include "journal/projector.h"

namespace burrow {
namespace {

constexpr const char* entryById = "SELECT " BURROW_ENTRY_COLUMNS "WHERE e.id = ?";
constexpr const char* entriesByArrival =
    "SELECT " BURROW_ENTRY_COLUMNS "WHERE e.n > ? ORDER BY e.n LIMIT ?";

}  // namespace

Uuid uuidAt(const storage::Query& row, int column) {
    return Uuid::fromBytes(row.blob(column)).value_or(Uuid{});
}

std::optional<Uuid> maybeUuidAt(const storage::Query& row, int column) {
    return row.isNull(column) ? std::nullopt : Uuid::fromBytes(row.blob(column));
}

std::optional<CivilDay> maybeDayAt(const storage::Query& row, int column) {
    if (row.isNull(column)) return std::nullopt;
    return CivilDay{static_cast<std::int32_t>(row.integer(column))};
}

StoredEntry storedEntryAt(const storage::Query& row) {
    return {row.integer(0),
            EntryId{uuidAt(row, 1)},
            DeviceId{uuidAt(row, 2)},
            row.integer(3),
            row.integer(4),
            row.integer(5),
            row.text(6),
            maybeUuidAt(row, 7),
            row.text(8),
            Instant{row.integer(9)},
            Instant{row.integer(10)},
            CivilDay{static_cast<std::int32_t>(row.integer(11))},
            row.text(12)};
}

Entry StoredEntry::toEntry() const {
    return {id,         device,
            seq,        act,
            hlc,        std::string(kind),
            thing,      nlohmann::json::parse(body, nullptr, false),
            recordedAt, happenedAt,
            day,        std::string(zone)};
}

Done insertEntry(storage::Connection& connection, const Entry& entry, std::int64_t device,
                 std::string_view body) {
    const auto thing = entry.thing ? std::optional(entry.thing->bytes) : std::nullopt;
    BURROW_TRY(auto insert,
               connection.query("INSERT INTO entry (id, device, seq, act, hlc, kind, thing, body, "
                                "recorded_at, happened_at, day, zone) VALUES (?, ?, ?, ?, ?, ?, ?, "
                                "?, ?, ?, ?, ?)"));
    return insert
        .bind(entry.id.uuid.bytes, device, entry.seq, entry.act, entry.hlc, entry.kind, thing, body,
              entry.recordedAt.ms, entry.happenedAt.ms, entry.day.days, entry.zone)
        .run();
}

Result<std::optional<Entry>> findEntry(storage::Connection& connection, const EntryId& id) {
    BURROW_TRY(auto rows, connection.query(entryById));
    rows.bind(id.uuid.bytes);
    BURROW_TRY(const bool found, rows.next());
    if (!found) return std::optional<Entry>();
    return std::optional<Entry>(storedEntryAt(rows).toEntry());
}

Result<std::vector<std::pair<std::int64_t, Entry>>> entriesAfter(storage::Connection& connection,
                                                                 std::int64_t after, int count) {
    std::vector<std::pair<std::int64_t, Entry>> entries;
    BURROW_TRY(auto rows, connection.query(entriesByArrival));
    rows.bind(after, count);
    while (true) {
        BURROW_TRY(const bool more, rows.next());
        if (!more) return entries;
        entries.emplace_back(rows.integer(0), storedEntryAt(rows).toEntry());
    }
}

std::optional<Fact> factAt(const storage::Query& row) {
    const auto kind = parseFactKind(row.text(2));
    if (!kind) return std::nullopt;
    const auto object = nlohmann::json::parse(row.text(6), nullptr, false);
    auto body = factBody(*kind, object);
    if (!body) return std::nullopt;
    return Fact{EntryId{uuidAt(row, 0)},
                SubjectId{uuidAt(row, 1)},
                *kind,
                CivilDay{static_cast<std::int32_t>(row.integer(3))},
                Instant{row.integer(4)},
                row.integer(5),
                *std::move(body)};
}

Result<std::vector<Fact>> factsOf(storage::Connection& connection, SubjectId subject) {
    std::vector<Fact> facts;
    BURROW_TRY(auto rows, connection.query(
                              "SELECT entry, subject, kind, day, happened_at, hlc, body FROM fact "
                              "WHERE subject = ? ORDER BY happened_at, hlc, entry"));
    rows.bind(subject.uuid.bytes);
    while (true) {
        BURROW_TRY(const bool more, rows.next());
        if (!more) return facts;
        if (auto fact = factAt(rows)) facts.push_back(*std::move(fact));
    }
}

}  // namespace burrow
