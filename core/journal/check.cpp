#include "journal/check.h"

#include <fmt/format.h>

#include <array>

#include "base/hash.h"
#include "journal/projections.h"
#include "journal/word_index.h"
#include "storage/copy.h"

namespace burrow {
namespace {

namespace fs = std::filesystem;
using storage::Connection;

Done addSqliteFindings(Connection& connection, CheckReport& report) {
    {
        BURROW_TRY(auto rows, connection.query("PRAGMA integrity_check(5)"));
        while (true) {
            BURROW_TRY(const bool more, rows.next());
            if (!more) break;
            if (rows.text(0) == "ok") continue;
            report.findings.push_back({"check.damaged", {{"cause", std::string(rows.text(0))}}});
        }
    }
    BURROW_TRY(auto rows, connection.query("PRAGMA foreign_key_check"));
    while (true) {
        BURROW_TRY(const bool more, rows.next());
        if (!more) return {};
        report.findings.push_back({"check.reference", {{"table", std::string(rows.text(0))}}});
    }
}

/// Only of this device: of others a book has what it was given. A number given twice is no gap.
Done addGapFindings(Connection& connection, CheckReport& report) {
    BURROW_TRY(const auto missing,
               connection.integer("SELECT coalesce(max(seq), 0) - count(DISTINCT seq) FROM entry "
                                  "WHERE device = (SELECT device FROM book)"));
    if (missing != 0) report.findings.push_back({"check.gap", {{"count", missing}}});
    return {};
}

/// Walks the same projection in both databases side by side; at most one finding a table.
Done compareProjection(Connection& kept, Connection& rebuilt, const Projection& projection,
                       CheckReport& report) {
    BURROW_TRY(auto left, kept.query(projection.rows));
    BURROW_TRY(auto right, rebuilt.query(projection.rows));
    while (true) {
        BURROW_TRY(const bool hasLeft, left.next());
        BURROW_TRY(const bool hasRight, right.next());
        if (!hasLeft && !hasRight) return {};
        if (hasLeft != hasRight || left.text(0) != right.text(0)) {
            report.findings.push_back(
                {"check.projection", {{"table", std::string(projection.table)}}});
            return {};
        }
    }
}

/// Of the copy as it came: asking the index writes.
Done addIndexFinding(Connection& copy, CheckReport& report) {
    const auto checked = checkWordIndex(copy);
    if (checked || checked.error().trouble != Trouble::corrupt) return checked;
    report.findings.push_back({"check.projection", {{"table", std::string("word_index")}}});
    return {};
}

Result<CheckReport> checkSnapshot(Book& book) {
    CheckReport report;
    auto& connection = book.connection();
    BURROW_DO(addSqliteFindings(connection, report));
    if (!report.isSound()) return report;  // what is damaged cannot be compared
    BURROW_DO(addGapFindings(connection, report));
    BURROW_TRY(report.entries, connection.integer("SELECT count(*) FROM entry"));
    BURROW_TRY(report.subjects, connection.integer("SELECT count(*) FROM subject"));

    std::array<std::uint8_t, 8> suffix{};
    book.surroundings().random.fill(suffix);
    const storage::Workpiece scratch(fs::temp_directory_path() /
                                     ("burrow-check-" + Sha256::of(suffix).hex().substr(0, 16)));
    BURROW_TRY(auto copy, Connection::open(scratch.path(), storage::Access::create));
    BURROW_DO(connection.copyInto(copy));
    BURROW_DO(addIndexFinding(copy, report));
    BURROW_DO(copy.execute("PRAGMA journal_mode = OFF; PRAGMA synchronous = OFF"));
    Projector projector(copy);
    BURROW_DO(copy.execute("BEGIN"));
    BURROW_DO(projector.rebuild());
    BURROW_DO(copy.execute("COMMIT"));
    for (const auto& projection : projections) {
        BURROW_DO(compareProjection(connection, copy, projection, report));
    }
    return report;
}

}  // namespace

Result<CheckReport> check(Book& book) {
    // One snapshot for all of it: another program may be writing meanwhile.
    BURROW_TRY(const auto snapshot, storage::Snapshot::take(book.connection()));
    return checkSnapshot(book);
}

Done repair(Book& book) {
    BURROW_TRY(auto transaction, storage::Transaction::begin(book.connection()));
    Projector projector(book.connection());
    BURROW_DO(projector.rebuild());
    return transaction.commit();
}

}  // namespace burrow
