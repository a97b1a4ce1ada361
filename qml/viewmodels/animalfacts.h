// What the page of an animal says line by line: its facts, why it is or is not due, and what shows its
// sex. Lines are maps as rows take them; `page` and `properties` name what a line opens.
#pragma once

#include "viewmodels/factwords.h"

namespace burrow {

/// What is read from the book besides the room.
struct AnimalRecord {
    std::vector<Fact> facts;  ///< all of them, newest first
    std::optional<Enclosure> enclosure;
    EnclosureNames names;
};
[[nodiscard]] Result<AnimalRecord> readAnimal(Book& book, SubjectId subject);

/// [{name, value, sub, missing, page, properties}]
[[nodiscard]] QVariantList factRows(const Resident& resident, const AnimalRecord& record,
                                    const Desk& desk);
/// [{name, value, sub, page, properties}]: an answer for every kind of care, which opens its working, then
/// how its stage was judged.
[[nodiscard]] QVariantList whyRows(const Resident& resident, const Desk& desk);
/// [{name, value, sub, page, properties}], newest first.
[[nodiscard]] QVariantList sexRows(const Resident& resident, const AnimalRecord& record,
                                   const Desk& desk);
/// The first thing that disagrees in the evidence for its sex; empty for none.
[[nodiscard]] QString sexConflictOf(const Resident& resident, const AnimalRecord& record,
                                    const Desk& desk);

}  // namespace burrow
