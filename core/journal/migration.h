// Brings books of earlier versions to the newest schema, and refuses what is no book or of a later one.
#pragma once

#include <span>
#include <string_view>

#include "storage/sqlite.h"

namespace burrow {

/// The number SQLite files carry in their header to say what they are: "Brbk".
inline constexpr std::int32_t bookApplicationId = 0x4272626B;

/// The version of this program's books.
[[nodiscard]] std::int64_t newestVersion();

/// The version of the book. Reads only. Fails with `badInput` for what is no book, with `newer` for
/// one that a later version wrote.
Result<std::int64_t> requireBook(storage::Connection& connection);

/// Takes the database through all steps it lacks and projects its journal anew, in one transaction: it
/// is of the newest version afterwards, or as it was. Keeps no copy.
Done migrate(storage::Connection& connection);
/// The same with other steps: for tests.
Done migrate(storage::Connection& connection, std::span<const std::string_view> steps);

}  // namespace burrow
