// Backups: whole copies of a book in a folder beside it, each flushed, read back and found whole before
// it gets its name. A few of each kind are kept; the oldest make room. What is in an entry's photos is
// not copied: photo files are never changed and stay where they are.
//
// Works by connections of its own, so it may be used from any thread while the book is open elsewhere.
#pragma once

#include <array>
#include <filesystem>
#include <functional>
#include <optional>
#include <string_view>
#include <vector>

#include "base/clock.h"
#include "base/files.h"
#include "base/ids.h"
#include "base/zone.h"

namespace burrow {

/// What a backup was made for.
enum class BackupReason { daily, weekly, asked, beforeImport, beforeMigration, beforeRestore };

struct BackupKind {
    BackupReason reason;
    std::string_view word;  ///< in the file's name
    std::size_t kept;       ///< the newest that stay when another one was made
};

/// How many of each are kept. Common practice (a few days, a month of weeks), no source; a book of ten
/// years takes about 150 MB, so all of them together stay near 2 GB at worst.
inline constexpr std::array backupKinds{
    BackupKind{BackupReason::daily, "daily", 3},
    BackupKind{BackupReason::weekly, "weekly", 4},
    BackupKind{BackupReason::asked, "asked", 3},
    BackupKind{BackupReason::beforeImport, "before-import", 2},
    BackupKind{BackupReason::beforeMigration, "before-migration", 2},
    BackupKind{BackupReason::beforeRestore, "before-restore", 2},
};
/// Days after which the daily backup is made as a weekly one.
inline constexpr int daysPerWeekly = 7;

[[nodiscard]] std::string_view name(BackupReason reason);

struct Backup {
    std::filesystem::path file;
    Instant madeAt;
    BackupReason reason = BackupReason::asked;
    std::uint64_t bytes = 0;
};

/// What is in a book file, of whatever version.
struct BookContents {
    BookId book;
    std::int64_t version = 0;  ///< of the schema
    std::int64_t entries = 0;
    std::int64_t subjects = 0;
    std::optional<EntryId> lastEntry;       ///< the one that arrived last
    std::optional<Instant> lastRecordedAt;  ///< when that one was written
};

/// Reads only. Fails with `corrupt` or `badInput` for what is no sound book, with `newer` for one of a
/// later version.
Result<BookContents> contentsOf(const std::filesystem::path& file);

class Backups {
public:
    using FreeBytes = std::function<std::uint64_t(const std::filesystem::path&)>;

    /// `clock` must outlive the object.
    Backups(std::filesystem::path book, const Clock& clock, Zone zone,
            FreeBytes freeBytes = freeBytesAt);

    /// Where the backups of a book stand.
    [[nodiscard]] static std::filesystem::path folderFor(const std::filesystem::path& book);
    [[nodiscard]] std::filesystem::path folder() const { return folderFor(book_); }
    [[nodiscard]] const std::filesystem::path& book() const { return book_; }

    /// By the names of the files alone, newest first. Empty where there is no folder.
    [[nodiscard]] Result<std::vector<Backup>> list() const;

    /// Which backup today still lacks, if any. Only lists the folder: cheap enough for every start.
    [[nodiscard]] Result<std::optional<BackupReason>> due() const;
    /// Makes the one that is due, unless nothing was written since the newest there is.
    [[nodiscard]] Result<std::optional<Backup>> makeIfDue() const;
    /// Makes one now. Fails with `full`, having touched nothing, where the device has no room even
    /// without the older daily backups; with `corrupt` where the book is not whole: then what was kept
    /// before stays, whatever its number.
    [[nodiscard]] Result<Backup> make(BackupReason reason) const;
    /// The newest one, where it holds just what the book holds; else makes one. For what is about to
    /// change much at once, and may be tried several times.
    [[nodiscard]] Result<Backup> ensure(BackupReason reason) const;

    /// Moves a damaged book, and what SQLite keeps or kept beside it, into the folder under a name that
    /// says so. Nothing where there is nothing.
    [[nodiscard]] Result<std::optional<std::filesystem::path>> putAside() const;

private:
    [[nodiscard]] Result<std::optional<Backup>> upToDate() const;
    [[nodiscard]] Result<Backup> copyBook(BackupReason reason) const;
    [[nodiscard]] std::filesystem::path freeName(std::string_view word) const;
    [[nodiscard]] Done makeRoom(std::uint64_t needed) const;
    [[nodiscard]] Done dropOldest(BackupReason reason, const std::filesystem::path& spare) const;

    std::filesystem::path book_;
    const Clock& clock_;
    Zone zone_;
    FreeBytes freeBytes_;
};

}  // namespace burrow
