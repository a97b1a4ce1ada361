// What a book has, in few words, so that another one sends only what it lacks.
#pragma once

#include <functional>
#include <map>
#include <set>

#include "journal/entry.h"
#include "journal/rows.h"
#include "storage/sqlite.h"

namespace burrow {

/// How many numbers of a device share one line of a version vector.
inline constexpr std::int64_t vectorBlock = 1024;

/// What a book has of numbers b * 1024 + 1 to (b + 1) * 1024 of a device.
struct KnownBlock {
    std::int64_t count = 0;
    Uuid digest;  ///< the ids of all its entries, joined by exclusive or

    friend bool operator==(const KnownBlock&, const KnownBlock&) = default;
};

/// Blocks by number rather than one "up to here": a book that was given no confidential entries has gaps
/// for ever, and still says exactly what it has.
struct VersionVector {
    std::map<DeviceId, std::map<std::int64_t, KnownBlock>> devices;

    friend bool operator==(const VersionVector&, const VersionVector&) = default;
};

/// Reads the index of the journal once: a second for five million entries.
Result<VersionVector> versionVector(storage::Connection& connection);

/// {"block": 1024, "devices": {"<device>": [[block, count, "<digest>"], ...]}}
[[nodiscard]] nlohmann::json toJson(const VersionVector& vector);
/// From elsewhere: what cannot be read is left out, so that at worst too much is sent.
[[nodiscard]] VersionVector versionVectorFrom(const nlohmann::json& written);

/// Which entries are passed on.
struct Selection {
    /// Only those of these subjects, of enclosures they are or were in, of the tags on both, and all that
    /// corrects them; everything where nothing is given.
    std::optional<std::set<SubjectId>> subjects;
    bool withConfidential = false;
};

/// Calls `send` for each selected entry that a book with this vector lacks, by device and number. Where
/// a block cannot be compared, all of it is sent. Stops at the first error of `send` and hands it on.
Done forEachEntryLacking(storage::Connection& connection, const VersionVector& vector,
                         const Selection& selection,
                         const std::function<Done(const StoredEntry&)>& send);

}  // namespace burrow
