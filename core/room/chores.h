// What a room needs done now and then without anybody asking: backups, and no litter among the photos.
#pragma once

#include <chrono>

#include "journal/backups.h"
#include "journal/book.h"
#include "pictures/sweep.h"

namespace burrow {

struct Chores {
    std::optional<Backup> backup;  ///< the one that was due
    std::int64_t sweptPhotos = 0;  ///< files that no entry names
};

/// For the start of the app and the turn of the day. Uses connections of its own, so it may run in any
/// thread while the book is open; where nothing is to be done, it lists two folders.
Result<Chores> doChores(const std::filesystem::path& book, const Clock& clock, const Zone& zone);

/// Removes photo files that no entry of the book or of its backups names. The number of files. Removes
/// nothing where a backup cannot be read, as it might name them.
Result<std::int64_t> sweepPhotos(const std::filesystem::path& book,
                                 std::chrono::seconds age = pictures::sweepAge);

/// How the photos that the book shows fare. Reads every one of them.
struct PhotoState {
    std::int64_t whole = 0;
    std::int64_t elsewhere = 0;  ///< not on this device: taken on another one
    std::int64_t damaged = 0;    ///< the bytes do not give the name
};
Result<PhotoState> lookOverPhotos(Book& book, Files& files);

}  // namespace burrow
