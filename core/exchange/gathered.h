// What of a book goes along when everything is taken along, in the order in which it is written. The order
// and the codes depend only on what is in the book, so that a book made from the files gives the same files.
#pragma once

#include <map>
#include <string>
#include <unordered_map>
#include <vector>

#include "journal/roster.h"

namespace burrow::exchange {

struct GatheredAnimal {
    std::string code;  ///< its number, or where another has the same, the number and "~2"
    Kept kept;         ///< as it stands
    Subject recorded;  ///< as its fields were set
};

struct GatheredEnclosure {
    std::string code;
    Enclosure enclosure;
};

struct Gathered {
    RoomInfo room;
    std::vector<GatheredAnimal> animals;
    std::vector<GatheredEnclosure> enclosures;
    std::vector<Tag> tags;
    /// Of the events that others are about: 1, 2, 3 ... in the order of the table of events.
    std::map<EntryId, std::string> labels;

    /// The code in the tables; for one that is not in the book its identifier, empty for none.
    [[nodiscard]] std::string codeOf(const std::optional<SubjectId>& animal) const;
    [[nodiscard]] std::string codeOf(const std::optional<EnclosureId>& enclosure) const;
    [[nodiscard]] std::string labelOf(const EntryId& entry) const;

private:
    friend Result<Gathered> gather(Book& book);
    Done addAnimals(Book& book);
    Done addEnclosures(Book& book);
    Done addTags(Book& book);
    Done addLabels(Book& book);
    std::map<SubjectId, std::string> animalCodes_;
    std::map<EnclosureId, std::string> enclosureCodes_;
};

/// Everything but the events, which are read animal by animal as they are written.
Result<Gathered> gather(Book& book);

}  // namespace burrow::exchange
