#include "journal/restore.h"

#include <set>
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
using storage::Query;

bool isDamage(const Error& error) {
    return error.trouble == Trouble::corrupt || error.message.id == "book.notABook";
}

/// The contents of the book now; nothing where it is not there or cannot be read for damage.
Result<std::optional<BookContents>> currentContents(const fs::path& book) {
    auto contents = contentsOf(book);
    if (contents) return std::optional(*std::move(contents));
    const auto& error = contents.error();
    if (isDamage(error) || error.trouble == Trouble::notFound) return std::optional<BookContents>();
    return failAs(contents);
}

constexpr const char* entriesById = "SELECT id, thing, day FROM entry ORDER BY id";

/// Counts entries that only one side has.
class OnlyHereCount {
public:
    void add(const Query& row) {
        ++count_.entries;
        if (const auto thing = maybeUuidAt(row, 1)) things_.insert(*thing);
        const CivilDay day{static_cast<std::int32_t>(row.integer(2))};
        count_.from = std::min(count_.from.value_or(day), day);
        count_.to = std::max(count_.to.value_or(day), day);
    }
    [[nodiscard]] OnlyHere count() const {
        auto count = count_;
        count.things = static_cast<std::int64_t>(things_.size());
        return count;
    }

private:
    OnlyHere count_;
    std::set<Uuid> things_;
};

/// Walks the entries of both side by side.
Done compare(const fs::path& book, const fs::path& backup, RestorePreview& preview) {
    BURROW_TRY(auto here, Connection::open(book, Access::readOnly));
    BURROW_TRY(auto there, Connection::open(backup, Access::readOnly));
    BURROW_TRY(auto left, here.query(entriesById));
    BURROW_TRY(auto right, there.query(entriesById));
    BURROW_TRY(bool hasLeft, left.next());
    BURROW_TRY(bool hasRight, right.next());
    OnlyHereCount lost;
    OnlyHereCount gained;
    while (hasLeft || hasRight) {
        const bool takesLeft = hasLeft && (!hasRight || uuidAt(left, 0) <= uuidAt(right, 0));
        const bool takesRight = hasRight && (!hasLeft || uuidAt(right, 0) <= uuidAt(left, 0));
        if (takesLeft && !takesRight) lost.add(left);
        if (takesRight && !takesLeft) gained.add(right);
        if (takesLeft) {
            BURROW_TRY(hasLeft, left.next());
        }
        if (takesRight) {
            BURROW_TRY(hasRight, right.next());
        }
    }
    preview.lost = lost.count();
    preview.gained = gained.count();
    return {};
}

RestorePreview withoutCurrent(RestorePreview preview) {
    preview.lost = {};
    preview.gained = {preview.backup.entries, preview.backup.subjects, {}, {}};
    return preview;
}

/// From here on the book writes as another device, with a clock above all that it holds.
Result<DeviceId> giveNewDevice(Connection& connection, const Surroundings& surroundings) {
    UuidSource uuids(surroundings.clock, surroundings.random);
    const DeviceId device{uuids.next()};
    BURROW_TRY(auto transaction, storage::Transaction::begin(connection));
    {
        BURROW_TRY(auto add, connection.query("INSERT INTO device (id) VALUES (?)"));
        BURROW_DO(add.bind(device.uuid.bytes).run());
        BURROW_TRY(auto change,
                   connection.query("UPDATE book SET device = (SELECT ref FROM device WHERE id = "
                                    "?), heard = max(heard, (SELECT max(hlc) FROM entry))"));
        BURROW_DO(change.bind(device.uuid.bytes).run());
    }
    BURROW_DO(transaction.commit());
    return device;
}

/// The backup as it will stand: of the newest version, with a new device.
Result<DeviceId> prepare(const fs::path& backup, const fs::path& piece,
                         const Surroundings& surroundings) {
    {
        BURROW_TRY(auto source, Connection::open(backup, Access::readOnly));
        BURROW_DO(storage::copyToFile(source, piece));
    }
    BURROW_TRY(auto connection, Connection::open(piece, Access::readWrite));
    BURROW_DO(connection.execute("PRAGMA synchronous = FULL"));
    BURROW_DO(migrate(connection));
    BURROW_TRY(const auto device, giveNewDevice(connection, surroundings));
    BURROW_DO(storage::requireWhole(connection));
    return device;
}

/// Keeps what the book holds and writes the piece over it, with nobody writing in between.
Result<fs::path> overwrite(const Backups& backups, const fs::path& piece) {
    BURROW_TRY(auto source, Connection::open(piece, Access::readOnly));
    BURROW_TRY(auto book, Connection::open(backups.book(), Access::readWrite));
    BURROW_DO(book.execute("PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL"));
    BURROW_TRY(auto overwriting, storage::Overwriting::begin(source, book));
    BURROW_TRY(const auto kept, backups.make(BackupReason::beforeRestore));
    BURROW_DO(overwriting.finish());
    return kept.file;
}

Done requireWholeBook(const fs::path& book) {
    BURROW_TRY(auto connection, Connection::open(book, Access::readOnly));
    return storage::requireWhole(connection);
}

/// Looks at every page of the book itself.
Result<bool> isWhole(const fs::path& book) {
    const auto whole = requireWholeBook(book);
    if (whole) return true;
    if (isDamage(whole.error())) return false;
    return failAs(whole);
}

/// As overwrite(), once more where the book is called damaged and is not: what a device failed to read
/// looks like damage. Nothing where it is.
Result<std::optional<fs::path>> overwriteIfWhole(const Backups& backups, const fs::path& piece) {
    auto kept = overwrite(backups, piece);
    if (!kept && kept.error().trouble == Trouble::corrupt) {
        BURROW_TRY(const bool whole, isWhole(backups.book()));
        if (!whole) return std::optional<fs::path>();
        kept = overwrite(backups, piece);
    }
    if (!kept) return failAs(kept);
    return std::optional(*std::move(kept));
}

/// For a book that is missing or damaged.
Result<std::optional<fs::path>> replace(const Backups& backups, const fs::path& piece) {
    BURROW_TRY(auto aside, backups.putAside());
    BURROW_DO(moveIntoPlace(piece, backups.book()));
    return aside;
}

}  // namespace

Result<RestorePreview> previewRestore(const Backups& backups, const fs::path& backup) {
    RestorePreview preview;
    auto contents = contentsOf(backup);
    if (!contents && isDamage(contents.error())) {
        return fail(Trouble::corrupt, {"restore.damaged"});
    }
    if (!contents) return failAs(contents);
    preview.backup = *contents;
    BURROW_TRY(preview.current, currentContents(backups.book()));
    if (!preview.current) return withoutCurrent(preview);
    if (preview.current->book != preview.backup.book) {
        return fail(Trouble::badInput, {"restore.otherBook"});
    }
    const auto compared = compare(backups.book(), backup, preview);
    if (compared) return preview;
    if (!isDamage(compared.error())) return failAs(compared);
    preview.current.reset();
    return withoutCurrent(preview);
}

Result<Restored> restore(const Backups& backups, const fs::path& backup,
                         const Surroundings& surroundings) {
    Restored restored;
    BURROW_TRY(restored.was, previewRestore(backups, backup));
    std::error_code error;
    fs::create_directories(backups.folder(), error);
    const BusyFolder busy(backups.folder());
    const storage::Workpiece piece(backups.folder() / "restoring.part");
    BURROW_TRY(restored.device, prepare(backup, piece.path(), surroundings));
    if (restored.was.current) {
        BURROW_TRY(restored.kept, overwriteIfWhole(backups, piece.path()));
        if (restored.kept) return restored;
    }
    BURROW_TRY(restored.kept, replace(backups, piece.path()));
    return restored;
}

}  // namespace burrow
