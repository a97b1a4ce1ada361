#include "storage/sqlite.h"

#include <sqlite3.h>

#include <system_error>
#include <utility>

#include "storage/copy.h"

namespace burrow::storage {
namespace {

namespace fs = std::filesystem;

/// How long to wait for another program that is writing.
constexpr int busyMilliseconds = 2000;

/// True when nobody may write the file: holds for the superuser too, whom the system would let.
bool isWriteProtected(const fs::path& path) {
    std::error_code error;
    const auto permissions = fs::status(path, error).permissions();
    constexpr auto anyWrite =
        fs::perms::owner_write | fs::perms::group_write | fs::perms::others_write;
    return !error && (permissions & anyWrite) == fs::perms::none;
}

}  // namespace

tl::unexpected<Error> failFrom(sqlite3* database, int code, const SourcePlace& where) {
    switch (code & 0xFF) {
        case SQLITE_BUSY:
        case SQLITE_LOCKED: return fail(Trouble::locked, {"book.locked"}, where);
        case SQLITE_FULL: return fail(Trouble::full, {"book.noRoom"}, where);
        case SQLITE_READONLY:
        case SQLITE_PERM:
        case SQLITE_AUTH: return fail(Trouble::readOnly, {"book.readOnly"}, where);
        case SQLITE_CORRUPT: return fail(Trouble::corrupt, {"book.damaged"}, where);
        case SQLITE_NOTADB: return fail(Trouble::corrupt, {"book.notABook"}, where);
        default: {
            const std::string cause =
                database != nullptr ? sqlite3_errmsg(database) : sqlite3_errstr(code);
            // What could not be flushed may be there after all when the book is opened again.
            if (code == SQLITE_IOERR_FSYNC) {
                return fail(Trouble::inputOutput, {"book.unsure", {{"cause", cause}}}, where);
            }
            return fail(Trouble::inputOutput, {"book.trouble", {{"cause", cause}}}, where);
        }
    }
}

// --- Query ---------------------------------------------------------------------------------------

Query::Query(sqlite3* database, sqlite3_stmt* statement)
    : database_(database), statement_(statement) {}

Query::Query(Query&& other) noexcept
    : database_(other.database_), statement_(std::exchange(other.statement_, nullptr)) {}

Query::~Query() {
    if (statement_ == nullptr) return;
    sqlite3_reset(statement_);
    sqlite3_clear_bindings(statement_);
}

Result<bool> Query::next() {
    const int code = sqlite3_step(statement_);
    if (code == SQLITE_ROW) return true;
    if (code == SQLITE_DONE) return false;
    return failFrom(database_, code);
}

Done Query::run() {
    BURROW_TRY(const bool row, next());
    static_cast<void>(row);
    sqlite3_reset(statement_);
    return {};
}

bool Query::isNull(int column) const {
    return sqlite3_column_type(statement_, column) == SQLITE_NULL;
}

std::int64_t Query::integer(int column) const { return sqlite3_column_int64(statement_, column); }

double Query::real(int column) const { return sqlite3_column_double(statement_, column); }

std::string_view Query::text(int column) const {
    const auto* bytes = reinterpret_cast<const char*>(sqlite3_column_text(statement_, column));
    if (bytes == nullptr) return {};
    return {bytes, static_cast<std::size_t>(sqlite3_column_bytes(statement_, column))};
}

std::span<const std::uint8_t> Query::blob(int column) const {
    const auto* bytes = static_cast<const std::uint8_t*>(sqlite3_column_blob(statement_, column));
    return {bytes, static_cast<std::size_t>(sqlite3_column_bytes(statement_, column))};
}

// A failed bind (only possible when out of memory) leaves NULL, which the schema's constraints
// refuse at the step; so binding itself needs no result.
void Query::bindNull(int index) { sqlite3_bind_null(statement_, index); }

void Query::bindInteger(int index, std::int64_t value) {
    sqlite3_bind_int64(statement_, index, value);
}

void Query::bindReal(int index, double value) { sqlite3_bind_double(statement_, index, value); }

void Query::bindText(int index, std::string_view value) {
    sqlite3_bind_text64(statement_, index, value.data() != nullptr ? value.data() : "",
                        value.size(), SQLITE_STATIC, SQLITE_UTF8);
}

void Query::bindBlob(int index, std::span<const std::uint8_t> value) {
    sqlite3_bind_blob64(statement_, index, value.data(), value.size(), SQLITE_STATIC);
}

// --- Connection ----------------------------------------------------------------------------------

void Connection::Closer::operator()(sqlite3* database) const { sqlite3_close_v2(database); }

void Connection::Finaliser::operator()(sqlite3_stmt* statement) const {
    sqlite3_finalize(statement);
}

Result<Connection> Connection::open(const fs::path& path, Access access) {
    std::error_code error;
    const auto name = path.filename().string();
    if (access != Access::create) {
        if (!fs::exists(path, error)) {
            return fail(Trouble::notFound, {"book.missing", {{"file", name}}});
        }
        if (!fs::is_regular_file(path, error)) {
            return fail(Trouble::badInput, {"book.notAFile", {{"file", name}}});
        }
        if (access == Access::readWrite && isWriteProtected(path)) {
            return fail(Trouble::readOnly, {"book.readOnly"});
        }
    }
    const bool readOnly = access == Access::readOnly;
    int flags = readOnly ? SQLITE_OPEN_READONLY : SQLITE_OPEN_READWRITE;
    if (access == Access::create) flags |= SQLITE_OPEN_CREATE;
    sqlite3* handle = nullptr;
    const int code = sqlite3_open_v2(path.c_str(), &handle, flags | SQLITE_OPEN_NOMUTEX, nullptr);
    Connection connection(handle, readOnly);
    if (code != SQLITE_OK) return failFrom(handle, code);
    sqlite3_extended_result_codes(handle, 1);
    sqlite3_busy_timeout(handle, busyMilliseconds);
    return connection;
}

Result<Query> Connection::query(const char* sql) {
    auto& statement = statements_[sql];
    if (!statement) {
        sqlite3_stmt* prepared = nullptr;
        const int code = sqlite3_prepare_v3(database_.get(), sql, -1, SQLITE_PREPARE_PERSISTENT,
                                            &prepared, nullptr);
        if (code != SQLITE_OK) {
            auto failed = failFrom(database_.get(), code);
            statements_.erase(sql);
            return failed;
        }
        statement.reset(prepared);
    }
    return Query(database_.get(), statement.get());
}

Done Connection::execute(const std::string& sql) {
    const int code = sqlite3_exec(database_.get(), sql.c_str(), nullptr, nullptr, nullptr);
    if (code != SQLITE_OK) return failFrom(database_.get(), code);
    return {};
}

Result<std::int64_t> Connection::integer(const char* sql) {
    BURROW_TRY(auto rows, query(sql));
    BURROW_TRY(const bool found, rows.next());
    return found ? rows.integer(0) : 0;
}

Done Connection::copyInto(Connection& target) {
    BURROW_TRY(auto copying, Overwriting::begin(*this, target));
    return copying.finish();
}

// --- Transaction ---------------------------------------------------------------------------------

Result<Transaction> Transaction::begin(Connection& connection) {
    if (connection.isReadOnly()) return fail(Trouble::readOnly, {"book.readOnly"});
    BURROW_TRY(auto start, connection.query("BEGIN IMMEDIATE"));
    BURROW_DO(start.run());
    return Transaction(connection);
}

Transaction::Transaction(Transaction&& other) noexcept
    : connection_(std::exchange(other.connection_, nullptr)) {}

Transaction::~Transaction() {
    // Some errors roll back by themselves; a second rollback then has nothing to do.
    if (connection_ != nullptr) static_cast<void>(connection_->execute("ROLLBACK"));
}

Done Transaction::commit() {
    BURROW_TRY(auto end, connection_->query("COMMIT"));
    BURROW_DO(end.run());
    connection_ = nullptr;
    return {};
}

// --- Snapshot ------------------------------------------------------------------------------------

Result<Snapshot> Snapshot::take(Connection& connection) {
    BURROW_DO(connection.execute("BEGIN"));
    Snapshot snapshot(connection);
    // BEGIN alone takes no snapshot yet: the first read does.
    BURROW_TRY(const auto tables, connection.integer("SELECT count(*) FROM sqlite_schema"));
    static_cast<void>(tables);
    return snapshot;
}

Snapshot::Snapshot(Snapshot&& other) noexcept
    : connection_(std::exchange(other.connection_, nullptr)) {}

Snapshot::~Snapshot() {
    if (connection_ != nullptr) static_cast<void>(connection_->execute("ROLLBACK"));
}

}  // namespace burrow::storage
