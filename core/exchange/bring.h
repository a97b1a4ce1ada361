// Brings records in from CSV files: enclosures, animals and what happened to them; and what leave()
// writes besides, tags and settings. All of it, or none of it; or, where the keeper says so, all good
// rows, and the bad ones handed back. The columns are described in LEAVING.md.
#pragma once

#include <functional>
#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "exchange/csv.h"
#include "journal/book.h"

namespace burrow::exchange {

/// In the order in which they are read, whatever the order of the sources.
enum class CsvKind { settings, enclosures, animals, tags, events };

[[nodiscard]] std::string_view name(CsvKind kind);

/// What a table was made from, where it is not the keeper's own file (see mapping.h): so that a bad row
/// is told by the line, the column and the text that the keeper knows.
struct Original {
    struct Row {
        int line = 0;
        std::string_view raw;
    };
    struct Unread {
        Row row;
        std::string column;  ///< the keeper's; empty where the whole row is meant
        Message problem;
    };
    std::vector<Row> rows;                       ///< of each row of the table, in their order
    std::vector<Unread> unread;                  ///< rows that could not even be mapped
    std::map<std::string, std::string> columns;  ///< the keeper's name for a column of the table
    /// What happened to animals of the same sheet: where an animal's row is bad, that is said once.
    bool followsAnimals = false;
};

struct CsvSource {
    CsvKind kind = CsvKind::animals;
    std::string_view text;               ///< the whole file; must outlive the call
    const Original* original = nullptr;  ///< where the text was made from another
};

/// Which of them a file is, by its header; nothing for a header that fits none.
[[nodiscard]] std::optional<CsvKind> recogniseCsv(std::string_view text);

struct BadRow {
    CsvKind kind = CsvKind::animals;
    int line = 0;
    std::string column;  ///< empty where the whole row is meant
    Message reason;
    std::string raw;
    std::size_t source = 0;  ///< which of the sources it stands in
};

struct BringReport {
    std::int64_t enclosures = 0;
    std::int64_t animals = 0;
    std::int64_t events = 0;
    std::int64_t tags = 0;
    std::int64_t settings = 0;
    std::int64_t badRows = 0;
    std::vector<BadRow> bad;  ///< the first of them, at most `BringOptions::mostReported`
    bool isDone = false;      ///< whether the book now holds what is counted
    ChangeSet changes;
};

struct BringOptions {
    bool skipBad = false;
    /// Stops before anything is kept: what a preview shows.
    bool onlyLook = false;
    std::size_t mostReported = 200;
    /// Called with each bad row, also those past `mostReported`.
    std::function<void(const BadRow&)> onBadRow;
    /// Called now and then with the rows read so far; false ends it with nothing kept.
    std::function<bool(std::int64_t)> onProgress;
};

/// Fails only where a file as a whole cannot be read (no header, a required column missing, not
/// UTF-8), or where the book cannot be written; bad rows are in the report.
Result<BringReport> bring(Book& book, const std::vector<CsvSource>& sources,
                          const BringOptions& options);

}  // namespace burrow::exchange
