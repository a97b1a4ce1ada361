#include "journal/backups.h"

#include <fmt/format.h>

#include <algorithm>
#include <system_error>

#include "base/busy_folder.h"
#include "journal/migration.h"
#include "journal/rows.h"
#include "storage/copy.h"

namespace burrow {
namespace {

namespace fs = std::filesystem;
using storage::Access;
using storage::Connection;

constexpr std::string_view ending = ".book";
/// Room that stays free for the next entries.
constexpr std::uint64_t reserveBytes = 8'000'000;
/// Of daily and weekly backups at least so many stay, however little room there is.
constexpr std::size_t leastScheduled = 2;
/// A clock that was once set wrong may have made names of years to come; they count as the oldest.
constexpr std::int64_t mostAheadMs = 86'400'000;

bool isScheduled(BackupReason reason) {
    return reason == BackupReason::daily || reason == BackupReason::weekly;
}

/// "20260508T191400Z": sorts by time, and every file system takes it.
std::string stamp(Instant at) {
    const CivilDay day{static_cast<std::int32_t>(at.ms / 86'400'000)};
    const auto date = yearMonthDay(day);
    const auto second = at.ms / 1000 % 86'400;
    return fmt::format("{:04}{:02}{:02}T{:02}{:02}{:02}Z", date.year, date.month, date.day,
                       second / 3600, second / 60 % 60, second % 60);
}

std::optional<Instant> parseStamp(std::string_view text) {
    if (text.size() != 16) return std::nullopt;
    const auto moment = parseIsoMoment(
        fmt::format("{}-{}-{}T{}:{}:{}Z", text.substr(0, 4), text.substr(4, 2), text.substr(6, 2),
                    text.substr(9, 2), text.substr(11, 2), text.substr(13, 2)));
    if (!moment || !moment->secondOfDay) return std::nullopt;
    const Instant at{(moment->day.days * std::int64_t{86'400} + *moment->secondOfDay) * 1000};
    return stamp(at) == text ? std::optional(at) : std::nullopt;
}

/// What a file's name says; nothing for a file that is no backup. "-2" and so on may stand at its end.
std::optional<Backup> parseName(const fs::path& file) {
    const auto text = file.filename().string();
    if (!text.ends_with(ending) || text.size() < 18) return std::nullopt;
    const auto at = parseStamp(std::string_view(text).substr(0, 16));
    if (!at || text[16] != '-') return std::nullopt;
    const auto rest = std::string_view(text).substr(17, text.size() - 17 - ending.size());
    for (const auto& kind : backupKinds) {
        if (!rest.starts_with(kind.word)) continue;
        const auto after = rest.substr(kind.word.size());
        const bool isNumbered = after.size() > 1 && after[0] == '-' &&
                                after.find_first_not_of("0123456789", 1) == after.npos;
        if (after.empty() || isNumbered) return Backup{file, *at, kind.reason, 0};
    }
    return std::nullopt;
}

Message noRoom(std::uint64_t needed, std::uint64_t free) {
    const auto megabytes = [](std::uint64_t bytes) {
        return static_cast<std::int64_t>((bytes + 999'999) / 1'000'000);
    };
    return {"backup.noRoom", {{"need_mb", megabytes(needed)}, {"free_mb", megabytes(free)}}};
}

}  // namespace

std::string_view name(BackupReason reason) {
    return std::find_if(backupKinds.begin(), backupKinds.end(),
                        [&](const auto& kind) { return kind.reason == reason; })
        ->word;
}

Result<BookContents> contentsOf(const fs::path& file) {
    BURROW_TRY(auto connection, Connection::open(file, Access::readOnly));
    BURROW_TRY(const auto version, requireBook(connection));
    BookContents contents;
    contents.version = version;
    BURROW_TRY(contents.entries, connection.integer("SELECT count(*) FROM entry"));
    BURROW_TRY(contents.subjects, connection.integer("SELECT count(*) FROM subject"));
    {
        BURROW_TRY(auto rows, connection.query("SELECT id FROM book"));
        BURROW_TRY(const bool found, rows.next());
        if (!found) return fail(Trouble::corrupt, {"book.damaged"});
        contents.book = BookId{uuidAt(rows, 0)};
    }
    BURROW_TRY(auto rows, connection.query("SELECT id, recorded_at FROM entry ORDER BY n DESC "
                                           "LIMIT 1"));
    BURROW_TRY(const bool found, rows.next());
    if (found) {
        contents.lastEntry = EntryId{uuidAt(rows, 0)};
        contents.lastRecordedAt = Instant{rows.integer(1)};
    }
    return contents;
}

Backups::Backups(fs::path book, const Clock& clock, Zone zone, FreeBytes freeBytes)
    : book_(std::move(book)),
      clock_(clock),
      zone_(std::move(zone)),
      freeBytes_(std::move(freeBytes)) {}

fs::path Backups::folderFor(const fs::path& book) {
    auto folder = book;
    folder += "-backups";
    return folder;
}

Result<std::vector<Backup>> Backups::list() const {
    std::vector<Backup> found;
    std::error_code error;
    fs::directory_iterator files(folder(), error);
    if (error == std::errc::no_such_file_or_directory) return found;
    for (; !error && files != fs::directory_iterator(); files.increment(error)) {
        auto backup = parseName(files->path());
        if (!backup) continue;
        backup->bytes = files->file_size(error);
        found.push_back(*std::move(backup));
    }
    if (error) {
        return fail(
            Trouble::inputOutput,
            {"file.trouble", {{"file", folder().filename().string()}, {"cause", error.message()}}});
    }
    const auto latest = clock_.now().ms + mostAheadMs;
    const auto age = [&](const Backup& backup) {
        const auto at = backup.madeAt.ms <= latest ? backup.madeAt.ms : 0;
        return std::pair(-at, backup.file.filename().string());
    };
    std::sort(found.begin(), found.end(),
              [&](const Backup& a, const Backup& b) { return age(a) < age(b); });
    return found;
}

Result<std::optional<BackupReason>> Backups::due() const {
    BURROW_TRY(const auto kept, list());
    const auto today = zone_.dayOf(clock_.now());
    bool hasWeekly = false;
    for (const auto& backup : kept) {
        if (!isScheduled(backup.reason)) continue;
        const int age = today - zone_.dayOf(backup.madeAt);
        if (age == 0) return std::optional<BackupReason>();
        hasWeekly |= backup.reason == BackupReason::weekly && age > 0 && age < daysPerWeekly;
    }
    return std::optional(hasWeekly ? BackupReason::daily : BackupReason::weekly);
}

/// The newest backup, where nothing was written since.
Result<std::optional<Backup>> Backups::upToDate() const {
    BURROW_TRY(auto kept, list());
    if (kept.empty()) return std::optional<Backup>();
    BURROW_TRY(const auto now, contentsOf(book_));
    for (auto& backup : kept) {
        // Several may have been made within one second.
        if (backup.madeAt != kept.front().madeAt) break;
        const auto then = contentsOf(backup.file);
        // One that cannot be read is no backup.
        const bool isSame = then && then->book == now.book && then->version == now.version &&
                            then->entries == now.entries && then->lastEntry == now.lastEntry;
        if (isSame) return std::optional(std::move(backup));
    }
    return std::optional<Backup>();
}

Result<std::optional<Backup>> Backups::makeIfDue() const {
    BURROW_TRY(const auto reason, due());
    if (!reason) return std::optional<Backup>();
    BURROW_TRY(const auto kept, upToDate());
    if (kept) return std::optional<Backup>();
    BURROW_TRY(auto made, make(*reason));
    return std::optional(std::move(made));
}

Result<Backup> Backups::ensure(BackupReason reason) const {
    BURROW_TRY(auto kept, upToDate());
    return kept ? *std::move(kept) : make(reason);
}

Result<Backup> Backups::make(BackupReason reason) const {
    auto made = copyBook(reason);
    // SQLite tells trouble in words for a book that is written in.
    if (!made && made.error().trouble == Trouble::corrupt) {
        return fail(Trouble::corrupt, {"backup.damaged"});
    }
    if (!made && made.error().trouble == Trouble::full) {
        std::error_code error;
        return fail(Trouble::full, noRoom(fs::file_size(book_, error), freeBytes_(folder())));
    }
    return made;
}

Result<Backup> Backups::copyBook(BackupReason reason) const {
    std::error_code error;
    fs::create_directories(folder(), error);
    if (error) {
        return fail(Trouble::readOnly,
                    {"file.forbidden", {{"file", folder().filename().string()}}});
    }
    const BusyFolder busy(folder());
    BURROW_TRY(auto source, Connection::open(book_, Access::readOnly));
    BURROW_TRY(const auto version, requireBook(source));
    static_cast<void>(version);
    BURROW_TRY(const auto bytes, storage::bytesOfCopy(source));
    BURROW_DO(makeRoom(bytes + reserveBytes));
    Backup made{freeName(name(reason)), clock_.now(), reason, bytes};
    BURROW_DO(storage::copyToFile(source, made.file));
    BURROW_DO(dropOldest(reason, made.file));
    return made;
}

fs::path Backups::freeName(std::string_view word) const {
    return freePath(folder(), fmt::format("{}-{}", stamp(clock_.now()), word), std::string(ending));
}

/// Lets the oldest daily and weekly backups go where nothing else helps, never the newest of them.
Done Backups::makeRoom(std::uint64_t needed) const {
    if (freeBytes_(folder()) >= needed) return {};
    BURROW_TRY(auto kept, list());
    std::erase_if(kept, [](const Backup& backup) { return !isScheduled(backup.reason); });
    auto promised = freeBytes_(folder());
    std::size_t goes = 0;
    while (promised < needed && kept.size() - goes > leastScheduled) {
        promised += kept[kept.size() - 1 - goes].bytes;
        ++goes;
    }
    if (promised < needed) return fail(Trouble::full, {"book.noRoom"});
    DeviceFiles files;
    for (; goes > 0; --goes, kept.pop_back()) BURROW_DO(files.remove(kept.back().file));
    return {};
}

Done Backups::dropOldest(BackupReason reason, const fs::path& spare) const {
    BURROW_TRY(auto kept, list());
    std::erase_if(kept, [&](const Backup& backup) {
        return backup.reason != reason || backup.file == spare;
    });
    const auto most = std::find_if(backupKinds.begin(), backupKinds.end(), [&](const auto& kind) {
                          return kind.reason == reason;
                      })->kept;
    DeviceFiles files;
    for (; kept.size() >= most; kept.pop_back()) BURROW_DO(files.remove(kept.back().file));
    return {};
}

Result<std::optional<fs::path>> Backups::putAside() const {
    std::error_code error;
    std::optional<fs::path> aside;
    for (const char* companion : {"-shm", "-wal", "-journal", ""}) {
        auto from = book_;
        from += companion;
        if (!fs::exists(from, error)) continue;
        if (!aside) {
            fs::create_directories(folder(), error);
            aside = freeName("damaged");
        }
        auto to = *aside;
        to += companion;
        BURROW_DO(moveIntoPlace(from, to));
    }
    return aside;
}

}  // namespace burrow
