// A found moult as drafts for the book.
#pragma once

#include "journal/book.h"
#include "pictures/store.h"

namespace burrow {

struct TakenPhoto {
    pictures::KeptPhoto kept;
    bool isDried = false;  ///< taken after the moult had dried
};

struct FoundMoult {
    SubjectId subject;
    FactBody body;  ///< its sizes, and whether it was the last one
    CivilDay day;
    std::optional<Instant> happenedAt;  ///< now, where nothing is given
    bool mayBeOnRecord = true;          ///< of a group's moults of one day each is another
    std::vector<TakenPhoto> photos;
};

struct MoultDrafts {
    std::vector<Draft> drafts;
    EntryId moult;
    bool wasOnRecord = false;
};

/// The moult and its photos as one act. A moult of that day that is on record already is added to, not
/// logged again: what was measured now stands beside what the record has.
Result<MoultDrafts> moultDrafts(Book& book, const FoundMoult& found);

/// How much the book holds of a moult: its readings and its photos. Nothing once it was taken back.
Result<std::size_t> writingsOf(Book& book, const EntryId& moult);

/// Photos of a moult that is in the book.
Result<std::vector<Draft>> photoDrafts(Book& book, const EntryId& moult,
                                       const std::vector<TakenPhoto>& photos);

}  // namespace burrow
