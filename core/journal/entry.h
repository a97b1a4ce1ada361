// One line of the journal, and the drafts from which entries are made.
#pragma once

#include <cstdint>
#include <map>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <variant>
#include <vector>

#include "base/ids.h"
#include "model/fact.h"
#include "model/subject.h"

namespace burrow {

/// Kinds besides those of facts. An entry of any other kind comes from a newer version: it is kept
/// and passed on, and changes nothing here.
namespace entrykind {
inline constexpr std::string_view set = "set";      ///< fields of a thing; the last writer counts
inline constexpr std::string_view amend = "amend";  ///< another body for a fact
inline constexpr std::string_view retract = "retract";  ///< the entry no longer counts; final
}  // namespace entrykind

/// The longest body that is taken from elsewhere, as JSON: 64 KiB.
inline constexpr std::size_t longestEntryBody = 65'536;
/// How many objects and lists may stand inside each other in it, itself counted.
inline constexpr int deepestEntryBody = 16;

struct Entry {
    EntryId id;
    DeviceId device;
    std::int64_t seq = 0;  ///< 1, 2, 3 ... within its device
    std::int64_t act = 0;  ///< seq of the first entry of the same tap: what one undo takes back
    std::int64_t hlc = 0;
    std::string kind;
    std::optional<Uuid> thing;
    nlohmann::json body;
    Instant recordedAt;
    Instant happenedAt;
    CivilDay day;
    std::string zone;
};

/// What fields belong to.
enum class ThingType { book, subject, enclosure, tag };

using FieldValues = std::map<std::string, nlohmann::json>;

struct FactDraft {
    SubjectId subject;
    FactKind kind = FactKind::note;
    FactBody body;
    std::optional<Instant> happenedAt;  ///< now, where nothing is given
    /// Drawn from Book::newId() where another draft of the same act refers to it; else it gets one.
    std::optional<EntryId> id = {};
    /// The civil day, where it is known already; else the one that `happenedAt` falls on here.
    std::optional<CivilDay> day = {};
    /// What follows from it is on record already: it sets no field.
    bool isHistory = false;
};

struct SetDraft {
    ThingType type = ThingType::subject;
    Uuid thing;
    FieldValues fields;
    std::optional<Instant> since = {};  ///< it has been so from then on; now, where nothing is said
};

/// Replaces the whole body of a fact, and the time where one is given. `day` as in FactDraft.
struct AmendDraft {
    EntryId entry;
    FactBody body;
    std::optional<Instant> happenedAt;
    std::optional<CivilDay> day = {};
};

struct RetractDraft {
    EntryId entry;
};

/// One of several amendments of a fact once more, as it was written: it replaces all of them.
struct AgainDraft {
    EntryId fact;
    EntryId amendment;
};

using Draft = std::variant<FactDraft, SetDraft, AmendDraft, RetractDraft, AgainDraft>;

/// What a transaction touched, for those who show it.
struct ChangeSet {
    std::vector<SubjectId> subjects;
    std::vector<EnclosureId> enclosures;
    bool tags = false;
    bool settings = false;
    /// Those appended, in order; none of those that a merge brought or took back, which may be a million.
    std::vector<EntryId> entries;

    /// Whether anything that is shown may differ from before.
    [[nodiscard]] bool isEmpty() const {
        return subjects.empty() && enclosures.empty() && !tags && !settings && entries.empty();
    }
};

}  // namespace burrow
