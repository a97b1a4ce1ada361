// What this book remembers of a shared folder between two visits.
#pragma once

#include <set>

#include "exchange/shared_files.h"
#include "journal/version_vector.h"
#include "storage/sqlite.h"

namespace burrow::exchange {

using KnownFiles = std::map<DeviceId, std::set<Writing>>;

struct FolderState {
    std::int64_t ref = 0;  ///< 0 for a folder that was never visited
    bool hadConfidential = false;
    std::optional<Uuid> newest;  ///< the last entry that was looked at
    VersionVector vector;        ///< what the files in the folder hold together
    KnownFiles known;            ///< files that were taken in, or written by this device
};

/// The entry that came last; nothing in an empty book. An entry may get the number of one that was taken
/// back, but never its id.
Result<std::optional<Uuid>> newestEntry(storage::Connection& connection);

Result<FolderState> loadFolderState(storage::Connection& connection, const std::string& path);

/// Both inside a transaction of the caller's.
Done saveFolderState(storage::Connection& connection, const std::string& path, FolderState& state);
Done saveKnownFile(storage::Connection& connection, std::int64_t folder, const DeviceId& device,
                   const Writing& writing);
Done forgetKnownFile(storage::Connection& connection, std::int64_t folder, const DeviceId& device,
                     const Writing& writing);

}  // namespace burrow::exchange
