// Writing in the past: what is logged late, amended, taken out of the history or put back. What a fact
// set with it (see Book::record) counts only while nothing later of its kind says otherwise.
#pragma once

#include "journal/book.h"

namespace burrow {

/// One reading of a fact: what it said from then on.
struct Reading {
    Instant writtenAt;
    CivilDay day;  ///< on which it happened, by this reading
    FactBody body;
};

/// The first writing of a fact and what was amended since, the one that counts last. Amendments that
/// were taken back are left out. Empty for an entry that is no fact or is not in the book.
Result<std::vector<Reading>> readingsOf(Book& book, const EntryId& fact);

/// A fact that may have happened before others of its kind: what those say stays.
Result<std::vector<Draft>> logging(Book& book, const FactDraft& draft);

/// Another body and time for a fact, and what follows from it now: the photos and sizes of a moult go along.
/// A fact that was confidential and is no longer gets an entry of its own, and the old one is retracted.
Result<std::vector<Draft>> amending(Book& book, const Fact& before, const FactBody& body,
                                    Instant happenedAt);

/// A fact that is taken out, with all that putBack() needs.
struct TakenOut {
    Fact fact;
    std::vector<Draft> drafts;       ///< retract it and the fields that were set with it
    std::vector<SetDraft> standing;  ///< those fields as they stood before
};

/// Nothing where the book has no such fact.
Result<std::optional<TakenOut>> takingOut(Book& book, const EntryId& id);

/// Writes a fact again that was taken out, as an entry of its own because a retraction is final. What
/// belonged to it, such as the photos of a moult, is handed on to the new entry.
Result<ChangeSet> putBack(Book& book, const TakenOut& taken);

}  // namespace burrow
