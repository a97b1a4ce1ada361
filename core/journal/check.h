// Looks a book over without changing it.
#pragma once

#include <vector>

#include "journal/book.h"

namespace burrow {

struct CheckReport {
    std::int64_t entries = 0;
    std::int64_t subjects = 0;
    std::vector<Message> findings;  ///< empty for a sound book

    [[nodiscard]] bool isSound() const { return findings.empty(); }
};

/// SQLite's own integrity check, foreign keys, gaps in the sequence of this device, and whether the
/// projections equal those rebuilt from the journal in a copy beside the system's temporary files.
Result<CheckReport> check(Book& book);

/// Brings the projections in line with the journal, in one transaction.
Done repair(Book& book);

}  // namespace burrow
