#include "journal/migration.h"

#include <fmt/format.h>

#include "journal/projector.h"
#include "storage/schema.h"

namespace burrow {

using storage::Connection;
using storage::Transaction;

std::int64_t newestVersion() { return static_cast<std::int64_t>(storage::schemaSteps().size()); }

Result<std::int64_t> requireBook(Connection& connection) {
    BURROW_TRY(const auto application, connection.integer("PRAGMA application_id"));
    BURROW_TRY(const auto version, connection.integer("PRAGMA user_version"));
    if (application != bookApplicationId || version < 1) {
        return fail(Trouble::badInput, {"book.notABook"});
    }
    if (version > newestVersion()) return fail(Trouble::newer, {"book.newer"});
    return version;
}

Done migrate(Connection& connection) { return migrate(connection, storage::schemaSteps()); }

Done migrate(Connection& connection, std::span<const std::string_view> steps) {
    BURROW_TRY(auto transaction, Transaction::begin(connection));
    // Read inside the transaction: another program may have migrated the book in the meantime.
    BURROW_TRY(const auto version, connection.integer("PRAGMA user_version"));
    const auto from = static_cast<std::size_t>(version);
    if (from >= steps.size()) return {};
    for (const auto step : steps.subspan(from)) {
        BURROW_DO(connection.execute(std::string(step)));
    }
    BURROW_DO(connection.execute(fmt::format("PRAGMA user_version = {}; PRAGMA application_id = {}",
                                             steps.size(), bookApplicationId)));
    // The steps may have changed what follows from the journal, or emptied it.
    if (version > 0) BURROW_DO(Projector(connection).rebuild());
    return transaction.commit();
}

}  // namespace burrow
