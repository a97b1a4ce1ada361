// What an animal's history says about its sex, as a list of sightings: examinations of its moults and of
// its underside, colours, and what only one of the sexes does.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "model/fact.h"
#include "model/profile.h"
#include "model/subject.h"
#include "sexing/ratios.h"

namespace burrow::sexing {

struct Sighting {
    std::optional<EntryId> entry;  ///< nothing for what the record of the animal itself says
    CivilDay day;                  ///< on which it was seen
    Look look = Look::moult;
    Sex says = Sex::unknown;  ///< unknown: looked, and could not tell
    /// Nothing where it was not written down; it is taken for `Clarity::partly` then.
    std::optional<Clarity> clarity;
    std::optional<Decisive> decisive;
    /// The skin that was looked at: the moult, or the moult before an examination of the living animal.
    /// Two looks at one skin are not independent.
    std::optional<EntryId> skin;
    std::optional<CivilDay> moultDay;     ///< of a look at a moult that the book has
    std::optional<Millimetres> carapace;  ///< at that moult
    std::string judge;                    ///< empty: the keeper
    bool sizeTells = true;  ///< the sizes of the table are those of its kind of animal

    friend bool operator==(const Sighting&, const Sighting&) = default;
};

/// In the order in which they were seen. `history` may be in any order; `order` is that of the species,
/// where it is known.
[[nodiscard]] std::vector<Sighting> sightingsOf(const Subject& subject,
                                                std::span<const Fact> history,
                                                std::optional<Order> order);

}  // namespace burrow::sexing
