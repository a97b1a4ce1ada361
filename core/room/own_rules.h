// A change of one of the keeper's own values of a rule, before it is made and while it is written.
#pragma once

#include "husbandry/rules.h"
#include "journal/roster.h"

namespace burrow {

struct RuleChange {
    RuleKey key;
    std::string value;  ///< as typed; empty where it is taken back

    [[nodiscard]] bool isTakenBack() const { return value.empty(); }
};

/// The key that one of the keeper's own values stands under.
[[nodiscard]] RuleKey keyOf(const Rule& own);
/// Whether both are for the same animals: names of species and places are compared without case.
[[nodiscard]] bool meansTheSame(const RuleKey& a, const RuleKey& b);

/// The room's rules as they will be. What is impossible is passed over.
[[nodiscard]] Rules rulesAfter(const RuleChange& change, const RoomInfo& info,
                               const Rules& shipped);
/// What is to be written into the book: the value, and nothing under other spellings of its key. Empty
/// where there is nothing to take back.
[[nodiscard]] FieldValues fieldsOf(const RuleChange& change, const RoomInfo& info);

}  // namespace burrow
