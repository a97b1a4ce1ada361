// A change of one of the keeper's own values of a rule, before and while it is made.
#pragma once

#include "viewmodels/desk.h"

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
/// What is to be written into the book: the value, and nothing under other spellings of its key.
[[nodiscard]] FieldValues fieldsOf(const RuleChange& change, const RoomInfo& info);
/// One act that can be undone.
[[nodiscard]] Deed deedOf(const RuleChange& change, const Room& room);

}  // namespace burrow
