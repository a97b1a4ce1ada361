// Taking everything along: the whole book as files that any other program can read. The files are described
// in LEAVING.md and book.schema.json, and both go along with them.
#pragma once

#include <filesystem>
#include <functional>
#include <span>
#include <string>
#include <vector>

#include "journal/book.h"

namespace burrow::exchange {

/// Takes the cells of one row.
using LeaveRow = std::function<Done(std::span<const std::string>)>;

/// A table of another room, beside those of the book.
struct LeaveTable {
    std::string file;  ///< "air.csv"
    std::vector<std::string> columns;
    /// Whether there is anything to write; where there is not, no file is made.
    std::function<Result<bool>(Book&)> hasAny;
    /// Hands over all rows; texts are guarded (csv.h).
    std::function<Done(Book&, const LeaveRow&)> write;
};

struct LeaveOptions {
    bool csv = true;                    ///< the tables that bring() reads, and a list of the photos
    bool json = true;                   ///< everything in one document, with the journal
    bool photos = true;                 ///< the upright copies, in a folder of their own
    std::vector<LeaveTable> more = {};  ///< with `csv`
    /// Called now and then with the events written so far; false ends it with nothing kept.
    std::function<bool(std::int64_t)> onProgress;
};

struct LeaveReport {
    std::int64_t enclosures = 0;
    std::int64_t animals = 0;
    std::int64_t events = 0;
    std::int64_t tags = 0;
    std::int64_t photos = 0;
    std::int64_t photosMissing = 0;  ///< named by an entry, but not on this device or not intact
    std::vector<std::filesystem::path> files;  ///< without the photos
};

/// Writes into the folder, which is made where it is missing. Refuses one that holds a file of the same
/// name already: nothing is written over. The files show the book at one moment, and appear all together
/// when the last is whole; photos, which are only ever added, are copied before them.
Result<LeaveReport> leave(Book& book, const std::filesystem::path& folder,
                          const LeaveOptions& options);

/// book.schema.json: a JSON Schema (draft 2020-12) of the document.
[[nodiscard]] std::string_view leaveSchema();
/// LEAVING.md: what each column and member means.
[[nodiscard]] std::string_view leaveDescription();

}  // namespace burrow::exchange
