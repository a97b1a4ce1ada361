#include "journal/check.h"

#include <fmt/format.h>

#include <array>
#include <system_error>

#include "base/hash.h"

namespace burrow {
namespace {

namespace fs = std::filesystem;
using storage::Connection;

struct Projection {
    const char* table;
    const char* rows;  ///< as one JSON text each, in key order
};

constexpr std::array projections{
    Projection{
        "correction",
        "SELECT json_array(hex(target), hlc, hex(entry), kind, body) FROM correction ORDER BY "
        "target, hlc, entry"},
    Projection{
        "fact",
        "SELECT json_array(hex(subject), happened_at, hlc, hex(entry), kind, day, body) FROM "
        "fact ORDER BY subject, happened_at, hlc, entry"},
    Projection{
        "field",
        "SELECT json_array(hex(thing), name, hlc, hex(entry), type, value) FROM field ORDER BY "
        "thing, name, hlc, entry"},
    Projection{
        "digest",
        "SELECT json_array(hex(subject), last_at, last_hlc, hex(last_entry), hex(state)) FROM "
        "digest ORDER BY subject"},
    Projection{"subject",
               "SELECT json_array(hex(id), number, form, species, sex, hatched, acquired, source, "
               "standing, quarantined, mature, hex(enclosure), place, hex(mother), hex(father), "
               "headcount, note) FROM subject ORDER BY id"},
    Projection{
        "enclosure",
        "SELECT json_array(hex(id), name, length_mm, width_mm, height_mm, substrate_mm, place, "
        "note) FROM enclosure ORDER BY id"},
    Projection{"tag",
               "SELECT json_array(code, side_mm, hex(subject), hex(enclosure)) FROM tag ORDER BY "
               "code"},
    Projection{"setting", "SELECT json_array(name, value) FROM setting ORDER BY name"},
};

/// A file that goes when its owner does.
class ScratchFile {
public:
    explicit ScratchFile(const std::string& name) : path_(fs::temp_directory_path() / name) {}
    ScratchFile(const ScratchFile&) = delete;
    ScratchFile& operator=(const ScratchFile&) = delete;
    ~ScratchFile() {
        std::error_code ignored;
        fs::remove(path_, ignored);
        fs::remove(path_.string() + "-journal", ignored);
    }
    [[nodiscard]] const fs::path& path() const { return path_; }

private:
    fs::path path_;
};

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

Done addGapFindings(Connection& connection, CheckReport& report) {
    BURROW_TRY(auto rows,
               connection.query("SELECT count(*), max(seq), min(seq) FROM entry GROUP BY "
                                "device"));
    while (true) {
        BURROW_TRY(const bool more, rows.next());
        if (!more) return {};
        const auto missing = rows.integer(1) - rows.integer(0);
        if (missing != 0) report.findings.push_back({"check.gap", {{"count", missing}}});
    }
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
    const ScratchFile scratch("burrow-check-" + Sha256::of(suffix).hex().substr(0, 16));
    BURROW_TRY(auto copy, Connection::open(scratch.path(), storage::Access::create));
    BURROW_DO(connection.copyInto(copy));
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
