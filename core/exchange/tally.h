// What a stream of entries adds up to. Whoever writes a bundle and whoever reads it count for themselves,
// and the two must agree.
#pragma once

#include <map>
#include <optional>
#include <string_view>
#include <unordered_set>
#include <vector>

#include "base/hash.h"
#include "journal/projector.h"
#include "journal/rows.h"

namespace burrow::exchange {

/// The entries of one author among them. An author is the device an entry was recorded on.
struct Share {
    std::int64_t first = 0;  ///< lowest seq
    std::int64_t last = 0;   ///< highest seq
    std::int64_t count = 0;
    Uuid digest;  ///< XOR of the ids: the same for the same entries in any order

    friend bool operator==(const Share&, const Share&) = default;
};

struct Totals {
    std::int64_t entries = 0;
    std::uint64_t bytes = 0;  ///< of their lines, with line ends
    Sha256 sha256;            ///< of the same
    std::int64_t animals = 0;
    std::optional<CivilDay> firstDay;  ///< of what happened; none where nothing did
    std::optional<CivilDay> lastDay;
    std::map<DeviceId, Share> authors;

    friend bool operator==(const Totals&, const Totals&) = default;
};

/// A photo that an entry names.
struct NamedPhoto {
    Sha256 picture;
    EntryId fact;  ///< what it belongs to: the photo's own entry, also where an amendment names it
};

class Tally {
public:
    void add(const Entry& entry);
    void add(const StoredEntry& entry);
    /// The bytes of lines, in pieces of any size.
    void addBytes(std::span<const std::uint8_t> bytes);
    /// Whether there are more entries, authors or animals already than another count has.
    [[nodiscard]] bool exceeds(const Totals& totals) const {
        return totals_.entries > totals.entries || totals_.authors.size() > totals.authors.size() ||
               animals_.size() > static_cast<std::size_t>(totals.animals);
    }
    /// Once, after the last entry.
    [[nodiscard]] Totals finish();
    [[nodiscard]] const std::vector<NamedPhoto>& photos() const { return photos_; }

private:
    /// What counts of both forms of an entry; `body` may be null where nothing in it counts.
    struct Counted {
        const EntryId& id;
        const DeviceId& device;
        std::int64_t seq;
        std::string_view kind;
        const std::optional<Uuid>& thing;
        CivilDay day;
        const nlohmann::json& body;
    };
    void count(const Counted& entry);

    Totals totals_;
    Sha256Stream hash_;
    std::unordered_set<Uuid, UuidHash> animals_;
    std::vector<NamedPhoto> photos_;
};

}  // namespace burrow::exchange
