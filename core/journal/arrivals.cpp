#include "journal/merge.h"
#include "journal/rows.h"

namespace burrow {
namespace {

/// Entries that are taken away in one go: keeps memory flat.
constexpr int portionSize = 2000;

Arrival arrivalAt(const storage::Query& row) {
    Arrival arrival;
    arrival.number = row.integer(0);
    arrival.at = {row.integer(1)};
    arrival.source = row.text(2);
    if (const auto device = maybeUuidAt(row, 3)) arrival.device = DeviceId{*device};
    arrival.entries = row.integer(4);
    if (!row.isNull(5)) arrival.takenBack = Instant{row.integer(5)};
    return arrival;
}

struct Span {
    std::int64_t first = 0;
    std::int64_t last = 0;
};

Result<Span> spanOf(storage::Connection& connection, std::int64_t arrival) {
    BURROW_TRY(auto row, connection.query("SELECT first_n, last_n FROM arrival WHERE number = ?"));
    row.bind(arrival);
    BURROW_TRY(const bool found, row.next());
    if (!found) return fail(Trouble::corrupt, {"book.damaged"});
    return Span{row.integer(0), row.integer(1)};
}

/// The journal's guard lets entries of an arrival go only while the book says so.
Done setTakingBack(storage::Connection& connection, std::optional<std::int64_t> arrival) {
    BURROW_TRY(auto update, connection.query("UPDATE book SET taking_back = ?"));
    return update.bind(arrival).run();
}

Done removeEntries(storage::Connection& connection, Projector& projector, const Span& span) {
    while (true) {
        BURROW_TRY(auto portion, entriesAfter(connection, span.first - 1, portionSize));
        while (!portion.empty() && portion.back().first > span.last) portion.pop_back();
        if (portion.empty()) return {};
        for (const auto& [n, entry] : portion) {
            {
                BURROW_TRY(auto remove, connection.query("DELETE FROM entry WHERE n = ?"));
                BURROW_DO(remove.bind(n).run());
            }
            BURROW_DO(projector.forget(entry));
            BURROW_TRY(const bool isForked, projector.lookForFork(entry.device, entry.seq));
            static_cast<void>(isForked);
        }
        BURROW_DO(projector.flushIfLarge());
    }
}

}  // namespace

Result<std::vector<Arrival>> arrivals(Book& book, int limit) {
    std::vector<Arrival> all;
    BURROW_TRY(auto rows, book.connection().query(
                              "SELECT number, at, source, device, entries, taken_back FROM arrival "
                              "ORDER BY number DESC LIMIT ?"));
    rows.bind(limit);
    while (true) {
        BURROW_TRY(const bool more, rows.next());
        if (!more) return all;
        all.push_back(arrivalAt(rows));
    }
}

Result<TakenBack> takeBackArrival(Book& book) {
    auto& connection = book.connection();
    BURROW_TRY(auto transaction, storage::Transaction::begin(connection));
    BURROW_TRY(const auto newest, arrivals(book, 1));
    if (newest.empty() || newest.front().takenBack) {
        return fail(Trouble::notFound, {"merge.nothingToTakeBack"});
    }
    TakenBack taken{newest.front(), {}};
    const auto number = taken.arrival.number;
    BURROW_TRY(const auto span, spanOf(connection, number));
    BURROW_DO(setTakingBack(connection, number));
    Projector projector(connection);
    projector.leaveOutEntries();
    BURROW_DO(removeEntries(connection, projector, span));
    BURROW_TRY(taken.changes, projector.finish());
    taken.arrival.takenBack = book.surroundings().clock.now();
    {
        BURROW_TRY(auto note,
                   connection.query("UPDATE arrival SET taken_back = ? WHERE number = ?"));
        BURROW_DO(note.bind(taken.arrival.takenBack->ms, number).run());
    }
    BURROW_DO(setTakingBack(connection, std::nullopt));
    BURROW_DO(transaction.commit());
    return taken;
}

}  // namespace burrow
