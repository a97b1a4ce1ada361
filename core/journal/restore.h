// Going back to a backup. The book as it is now becomes a backup itself first, and what takes its place
// writes under a device id of its own, so that no sequence number is ever given twice.
#pragma once

#include "journal/backups.h"
#include "journal/book.h"

namespace burrow {

/// Entries that one of two books has and the other lacks.
struct OnlyHere {
    std::int64_t entries = 0;
    std::int64_t things = 0;  ///< subjects, enclosures, tags they are about
    std::optional<CivilDay> from;
    std::optional<CivilDay> to;
};

struct RestorePreview {
    BookContents backup;
    /// Nothing where there is no book, or a damaged one: it is put aside then.
    std::optional<BookContents> current;
    OnlyHere lost;    ///< in the book now, not in the backup
    OnlyHere gained;  ///< in the backup, not in the book now
};

/// Reads only. Fails with `badInput` where the backup is of another book.
Result<RestorePreview> previewRestore(const Backups& backups, const std::filesystem::path& backup);

struct Restored {
    RestorePreview was;
    std::optional<std::filesystem::path> kept;  ///< what stood in its place, as a backup
    DeviceId device;                            ///< that the book writes under from here on
};

/// Puts a backup in the place of the book. Until the last moment the book is as it was; programs that
/// have it open see the restored one from then on, as if it had been written. `book` fails with
/// `locked` while another program writes, with `full` where the device has no room for both.
Result<Restored> restore(const Backups& backups, const std::filesystem::path& backup,
                         const Surroundings& surroundings);

}  // namespace burrow
