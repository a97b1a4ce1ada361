// Copies of whole databases, made with SQLite's backup API: consistent while others read and write.
#pragma once

#include "storage/sqlite.h"

struct sqlite3_backup;

namespace burrow::storage {

/// Bytes that a copy of the database takes.
Result<std::uint64_t> bytesOfCopy(Connection& source);

/// Writes a copy to `target`, one file without companions. It gets its name only after it was flushed
/// to the device, read back and found whole; until then it has ".part" after its name, and a file that
/// stood there stays. Fails with `corrupt` where the copy is not whole.
Done copyToFile(Connection& source, const std::filesystem::path& target);

/// Removes a database file and what SQLite keeps beside it, as far as they are there.
void removeDatabase(const std::filesystem::path& path);

/// A database that is only worked on: gone with its owner, unless it was moved away; also what an earlier
/// owner left behind.
class Workpiece {
public:
    explicit Workpiece(std::filesystem::path path) : path_(std::move(path)) {
        removeDatabase(path_);
    }
    Workpiece(const Workpiece&) = delete;
    Workpiece& operator=(const Workpiece&) = delete;
    ~Workpiece() { removeDatabase(path_); }
    [[nodiscard]] const std::filesystem::path& path() const { return path_; }

private:
    std::filesystem::path path_;
};

/// SQLite's integrity check; fails with `corrupt`.
Done requireWhole(Connection& connection);

/// Writes one database over another in a single transaction of the latter, whoever else has it open.
/// Nothing of it is seen, by whomever, before finish(); without finish() nothing happens. Both
/// connections must outlive it.
class Overwriting {
public:
    /// From here on nobody else can write to `target`.
    static Result<Overwriting> begin(Connection& source, Connection& target);
    Overwriting(Overwriting&&) noexcept = default;
    Overwriting& operator=(Overwriting&&) noexcept = default;

    Done finish();

private:
    struct Closer {
        void operator()(sqlite3_backup* copying) const;
    };
    Overwriting(sqlite3_backup* copying, sqlite3* target) : copying_(copying), target_(target) {}

    std::unique_ptr<sqlite3_backup, Closer> copying_;
    sqlite3* target_;
};

}  // namespace burrow::storage
