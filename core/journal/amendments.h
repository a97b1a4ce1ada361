// What was written about a fact later, and which of it counts.
#pragma once

#include <nlohmann/json.hpp>

#include "journal/entry.h"
#include "journal/heads.h"
#include "storage/sqlite.h"

namespace burrow {

/// The entry ids of a JSON array; what is none is passed over.
[[nodiscard]] std::vector<EntryId> entryIds(const nlohmann::json& array);

struct Amendment {
    Said said;
    nlohmann::json entryBody;  ///< {entry, body, happened_at, day, over}

    /// The body it gives the fact; an object, or null where it gives none that could be one.
    [[nodiscard]] const nlohmann::json& body() const;
    [[nodiscard]] std::optional<Instant> happenedAt() const;
    [[nodiscard]] std::optional<CivilDay> day() const;
};

/// In the order of (stamp, entry).
struct Amendments {
    bool isRetracted = false;  ///< the fact itself
    std::vector<Amendment> plain;
    std::vector<Amendment> confidential;  ///< of these only the confidential fields count

    [[nodiscard]] bool isNone() const {
        return !isRetracted && plain.empty() && confidential.empty();
    }
};

Result<Amendments> amendmentsOf(storage::Connection& connection, const EntryId& fact);

/// Those that nobody replaced, the one that counts first.
[[nodiscard]] std::vector<const Amendment*> headsOf(const std::vector<Amendment>& amendments);
/// Whether they make the same of a fact.
[[nodiscard]] bool sayTheSame(const Amendment& a, const Amendment& b);

/// Gives the entry of a fact the body and the time that count. False where it was retracted.
[[nodiscard]] bool applyTo(Entry& entry, const Amendments& amendments);

/// What a new amendment over all of these has to name as replaced. Where that is confidential, also what
/// it replaced in turn: others may not have it.
[[nodiscard]] nlohmann::json replacing(const std::vector<Amendment>& amendments);

}  // namespace burrow
