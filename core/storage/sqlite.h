// A thin layer over SQLite: owned handles, typed binding, and errors as values. One connection belongs
// to one thread; statements live inside their connection.
#pragma once

#include <cstdint>
#include <filesystem>
#include <memory>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <type_traits>
#include <unordered_map>

#include "base/result.h"

struct sqlite3;
struct sqlite3_stmt;

namespace burrow::storage {

/// What a SQLite result code means for the keeper; `database` may be null.
[[nodiscard]] tl::unexpected<Error> failFrom(sqlite3* database, int code,
                                             const SourcePlace& where = SourcePlace::here());

/// A prepared statement in use: bind, then step through the rows. Goes back to its connection, ready
/// for the next use, when it leaves scope.
class Query {
public:
    Query(sqlite3* database, sqlite3_stmt* statement);
    Query(Query&& other) noexcept;
    Query(const Query&) = delete;
    Query& operator=(const Query&) = delete;
    Query& operator=(Query&&) = delete;
    ~Query();

    /// Binds all parameters in order: integers, doubles, texts, blobs, enums as integers, nullopt or
    /// nullptr as NULL. Texts and blobs must outlive the query.
    template <class... Values>
    Query& bind(const Values&... values) {
        int index = 0;
        (bindAny(++index, values), ...);
        return *this;
    }

    /// True while there is a row.
    Result<bool> next();
    /// For statements without rows.
    Done run();

    [[nodiscard]] bool isNull(int column) const;
    [[nodiscard]] std::int64_t integer(int column) const;
    [[nodiscard]] double real(int column) const;
    /// Valid until the next step.
    [[nodiscard]] std::string_view text(int column) const;
    [[nodiscard]] std::span<const std::uint8_t> blob(int column) const;

private:
    template <class Value>
    void bindAny(int index, const Value& value) {
        if constexpr (std::is_same_v<Value, std::nullopt_t> ||
                      std::is_same_v<Value, std::nullptr_t>) {
            bindNull(index);
        } else if constexpr (requires { value.has_value(); }) {
            value ? bindAny(index, *value) : bindNull(index);
        } else if constexpr (std::is_enum_v<Value> || std::is_integral_v<Value>) {
            bindInteger(index, static_cast<std::int64_t>(value));
        } else if constexpr (std::is_floating_point_v<Value>) {
            bindReal(index, value);
        } else if constexpr (std::is_convertible_v<const Value&, std::string_view>) {
            bindText(index, value);
        } else {
            bindBlob(index, value);
        }
    }
    void bindNull(int index);
    void bindInteger(int index, std::int64_t value);
    void bindReal(int index, double value);
    void bindText(int index, std::string_view value);
    void bindBlob(int index, std::span<const std::uint8_t> value);

    sqlite3* database_;
    sqlite3_stmt* statement_;
};

enum class Access { readOnly, readWrite, create };

class Connection {
public:
    /// Opens the file, and makes it only with `create`. Nothing is written by opening.
    static Result<Connection> open(const std::filesystem::path& path, Access access);

    Connection(Connection&&) noexcept = default;
    Connection& operator=(Connection&&) noexcept = default;

    /// Prepares once and keeps the statement. `sql` must be a literal: its address is the key.
    Result<Query> query(const char* sql);
    /// Runs one or more statements without parameters.
    Done execute(const std::string& sql);
    Result<std::int64_t> integer(const char* sql);

    /// Copies the whole database into `target`, a consistent snapshot.
    Done copyInto(Connection& target);

    [[nodiscard]] bool isReadOnly() const { return readOnly_; }

private:
    friend class Overwriting;
    friend class WordSplitter;
    struct Closer {
        void operator()(sqlite3* database) const;
    };
    struct Finaliser {
        void operator()(sqlite3_stmt* statement) const;
    };
    using Statement = std::unique_ptr<sqlite3_stmt, Finaliser>;

    explicit Connection(sqlite3* database, bool readOnly)
        : database_(database), readOnly_(readOnly) {}

    // Statements are destroyed before the handle they belong to.
    std::unique_ptr<sqlite3, Closer> database_;
    std::unordered_map<const char*, Statement> statements_;
    bool readOnly_ = false;
};

/// Begins at once as a writer, and rolls back unless committed.
class Transaction {
public:
    static Result<Transaction> begin(Connection& connection);
    Transaction(Transaction&& other) noexcept;
    Transaction(const Transaction&) = delete;
    Transaction& operator=(const Transaction&) = delete;
    Transaction& operator=(Transaction&&) = delete;
    ~Transaction();

    /// After this returns, the data is on the device (WAL with synchronous FULL).
    Done commit();

private:
    explicit Transaction(Connection& connection) : connection_(&connection) {}
    Connection* connection_;
};

/// Holds what is read still: as long as it lives, the connection sees the database as it was, whatever
/// others write. Not inside a Transaction.
class Snapshot {
public:
    static Result<Snapshot> take(Connection& connection);
    Snapshot(Snapshot&& other) noexcept;
    Snapshot(const Snapshot&) = delete;
    Snapshot& operator=(const Snapshot&) = delete;
    Snapshot& operator=(Snapshot&&) = delete;
    ~Snapshot();

private:
    explicit Snapshot(Connection& connection) : connection_(&connection) {}
    Connection* connection_;
};

}  // namespace burrow::storage
