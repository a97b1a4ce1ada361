// What the book says about an animal's sex, and whose moults wait to be looked at.
#pragma once

#include "husbandry/profiles.h"
#include "journal/roster.h"
#include "sexing/judge.h"

namespace burrow {

/// A moult of which there are photos.
struct PhotographedMoult {
    EntryId moult;  ///< or the photo that stands for it
    CivilDay day;
    std::optional<Millimetres> carapace;
    std::vector<Sha256> pictures;
    bool isLooked = false;  ///< somebody has said what it shows
};

/// The moult that an entry is, shows or judges, where there is a photo of it to be looked at. An examination
/// may name the photo instead of its moult.
Result<std::optional<EntryId>> moultToSex(Book& book, const Fact& entry);

/// One animal's case.
struct SexCase {
    Kept kept;
    std::vector<Fact> history;              ///< newest first
    std::vector<PhotographedMoult> moults;  ///< newest first
    std::vector<sexing::Sighting> sightings;
    sexing::Finding finding;
};

/// Nothing where the book has no such subject. A group has no sex: its case is without evidence.
Result<std::optional<SexCase>> sexCase(Book& book, SubjectId subject,
                                       const sexing::SexingRules& rules, const Profiles& profiles);

/// An animal whose sex is open, with the moult that would tell most.
struct ToBeSexed {
    SubjectId subject;
    PhotographedMoult moult;
    bool isRecorded = false;  ///< a sex is on record, on somebody's word
    int waiting = 0;          ///< of its moults with photos, those at which nobody has looked
    double female = 0.5;      ///< P(female) as far as it is known
    double bits = 0;          ///< that a clear look is expected to tell; 0 where all were looked at
};

/// Animals that are kept, have photos of a moult, and whose sex is not settled by evidence; those with a sex
/// on record only while nothing in the book speaks for it, or what does says otherwise. Those with a moult
/// that nobody has looked at come first: those of unknown sex, then by what a look is expected to tell (in
/// tenths of a bit), the oldest first among equals. Then those whose moults were all looked at without an
/// end: for a second opinion.
Result<std::vector<ToBeSexed>> toBeSexed(Book& book, const sexing::SexingRules& rules,
                                         const Profiles& profiles);

}  // namespace burrow
