#include "storage/copy.h"

#include <sqlite3.h>

#include <cstdlib>
#include <system_error>

#include "base/files.h"

namespace burrow::storage {
namespace {

namespace fs = std::filesystem;

/// How often to ask again for a database in which another program is writing.
constexpr int mostTries = 2500;
/// Short, so that it is also let in between two entries of a program that writes all the time.
constexpr int waitMilliseconds = 2;

/// Takes the locks and copies the first page. Copying knows no busy timeout of its own.
int firstStep(sqlite3_backup* copying) {
    int code = sqlite3_backup_step(copying, 1);
    for (int tries = 1; tries < mostTries && (code == SQLITE_BUSY || code == SQLITE_LOCKED);
         ++tries) {
        sqlite3_sleep(waitMilliseconds);
        code = sqlite3_backup_step(copying, 1);
    }
    return code;
}

Done writeCopy(Connection& source, const fs::path& path) {
    BURROW_TRY(auto copy, Connection::open(path, Access::create));
    BURROW_DO(copy.execute("PRAGMA synchronous = FULL"));
    BURROW_TRY(auto writing, Overwriting::begin(source, copy));
    BURROW_DO(writing.finish());
    // The source writes ahead into a second file; a copy stands alone.
    return copy.execute("PRAGMA journal_mode = DELETE");
}

/// Reads the file back through a connection that has nothing of it in memory.
Done readBack(const fs::path& path) {
    BURROW_TRY(auto copy, Connection::open(path, Access::readOnly));
    return requireWhole(copy);
}

}  // namespace

Result<std::uint64_t> bytesOfCopy(Connection& source) {
    BURROW_TRY(const auto pages, source.integer("PRAGMA page_count"));
    BURROW_TRY(const auto size, source.integer("PRAGMA page_size"));
    return static_cast<std::uint64_t>(pages) * static_cast<std::uint64_t>(size);
}

Done copyToFile(Connection& source, const fs::path& target) {
    auto part = target;
    part += ".part";
    const Workpiece unfinished(part);
    BURROW_DO(writeCopy(source, part));
    BURROW_DO(readBack(part));
    return moveIntoPlace(part, target);
}

void removeDatabase(const fs::path& path) {
    std::error_code ignored;
    for (const char* ending : {"", "-journal", "-wal", "-shm"}) {
        auto file = path;
        file += ending;
        fs::remove(file, ignored);
    }
}

Done requireWhole(Connection& connection) {
    BURROW_TRY(auto rows, connection.query("PRAGMA integrity_check(1)"));
    BURROW_TRY(const bool found, rows.next());
    if (!found) return fail(Trouble::corrupt, {"book.damaged"});
    const std::string said(rows.text(0));
    if (said == "ok") return {};
    // A page that the device did not give is no damage; SQLite tells of both in the same way, with the
    // code behind "error code=" or "error code ".
    constexpr std::string_view unread = "error code";
    const auto at = said.find(unread);
    const int code = at == said.npos ? 0 : std::atoi(said.c_str() + at + unread.size() + 1);
    if ((code & 0xFF) == SQLITE_IOERR) return failFrom(nullptr, code);
    return fail(Trouble::corrupt, {"book.damaged"});
}

void Overwriting::Closer::operator()(sqlite3_backup* copying) const {
    sqlite3_backup_finish(copying);
}

Result<Overwriting> Overwriting::begin(Connection& source, Connection& target) {
    auto* const handle = target.database_.get();
    auto* const copying = sqlite3_backup_init(handle, "main", source.database_.get(), "main");
    if (copying == nullptr) return failFrom(handle, sqlite3_errcode(handle));
    Overwriting overwriting(copying, handle);
    const int code = firstStep(copying);
    if (code != SQLITE_OK && code != SQLITE_DONE) return failFrom(nullptr, code);
    return overwriting;
}

Done Overwriting::finish() {
    const int stepped = sqlite3_backup_step(copying_.get(), -1);
    const int finished = sqlite3_backup_finish(copying_.release());
    if (stepped != SQLITE_DONE) return failFrom(nullptr, stepped);
    if (finished != SQLITE_OK) return failFrom(target_, finished);
    return {};
}

}  // namespace burrow::storage
