// Text that says it is CSV, read row by row.
#include "exchange/csv.h"
#include "fuzz/target.h"

using burrow::exchange::csvCell;
using burrow::exchange::CsvReader;

FUZZ_TARGET(csv) {
    auto reader = CsvReader::open(bytes);
    if (!reader) return;
    BURROW_REQUIRE(!reader->header().empty());
    int line = 1;
    while (const auto row = reader->next()) {
        BURROW_REQUIRE(row->line > line);
        line = row->line;
        BURROW_REQUIRE(bytes.find(row->raw) != std::string_view::npos);
        if (row->problem) continue;
        BURROW_REQUIRE(row->cells.size() == reader->header().size());
        // What was read can be written, and reads the same.
        std::string again("a,b\n");
        for (const auto& cell : {row->cells.front(), row->cells.back()}) {
            again += csvCell(cell, ',') + (again.back() == '\n' ? "," : "\n");
        }
        auto second = CsvReader::open(again);
        BURROW_REQUIRE(second.has_value());
        const auto same = second->next();
        const bool isBlank = row->cells.front().empty() && row->cells.back().empty();
        BURROW_REQUIRE(isBlank || (same && !same->problem));
        if (same && !same->problem) {
            BURROW_REQUIRE(same->cells.front() == row->cells.front());
            BURROW_REQUIRE(same->cells.back() == row->cells.back());
        }
    }
}
