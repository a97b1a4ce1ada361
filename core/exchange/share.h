// A shared folder carries a book between the keeper's devices without any of them talking to another: each
// visit takes in what the others wrote there, and writes what they lack into the device's own folder. What
// moves the files (a sync engine, a network drive, a stick) is of no concern here.
#pragma once

#include <chrono>
#include <filesystem>
#include <string>
#include <vector>

#include "exchange/bundle.h"

namespace burrow::exchange {

struct ShareOptions {
    PhotoChoice photos = PhotoChoice::full;
    bool withConfidential = false;
    /// Writes everything once more: for a folder in which something went missing.
    bool anew = false;
    std::string program;
    /// For thumbnails of what comes, and for PhotoChoice::reduced.
    pictures::Developer* developer = nullptr;
    OnProgress onProgress;
    /// How long a file stays after a larger one took its place, so that the larger one arrives first.
    std::chrono::seconds grace = std::chrono::minutes(10);
};

/// A file that could not be taken in on this visit.
struct NotTaken {
    std::string name;  ///< below the shared folder
    Message reason;
};

struct ShareReport {
    std::int64_t filesTaken = 0;
    std::int64_t entriesAdded = 0;
    std::int64_t photosAdded = 0;
    std::int64_t entriesWritten = 0;
    std::int64_t photosWritten = 0;
    /// Not whole yet: the next visit looks again.
    std::vector<NotTaken> waiting;
    /// Of another book, or written by a later version.
    std::vector<NotTaken> refused;
    std::int64_t passedOver = 0;  ///< conflict copies and whatever else is no file of ours
    std::vector<AheadDevice> ahead;
    std::vector<DeviceId> forked;
    bool isNewDevice = false;
    std::int64_t differences = 0;  ///< to settle in the book now
    ChangeSet changes;             ///< without `entries`
};

/// One visit. Fails where the folder is not there, and where the book or the folder cannot be written; what
/// was taken in until then stays. Nobody else's files are ever touched.
Result<ShareReport> visitSharedFolder(Book& book, const std::filesystem::path& folder, Files& files,
                                      const ShareOptions& options);

}  // namespace burrow::exchange
