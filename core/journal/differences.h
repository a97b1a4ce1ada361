// Where two keepers, or one with two phones, said different things without knowing of each other. All
// that was said is kept; one of them counts until the keeper settles it.
#pragma once

#include "journal/book.h"

namespace burrow {

/// One of the things that were said.
struct Choice {
    EntryId entry;
    DeviceId device;
    Instant recordedAt;
    nlohmann::json value;               ///< of the field, or the body of the fact
    std::optional<Instant> happenedAt;  ///< where an amendment gives a time
    std::optional<CivilDay> day;
    std::optional<SubjectId> subject;  ///< of those with the same number
};

struct Difference {
    enum class Kind {
        field,             ///< of a thing; settled by writing the chosen value
        amendment,         ///< of a fact; settled by writing the chosen one again
        confidentialPart,  ///< party or price of a fact; the same
        number,  ///< two living subjects have it; the chosen one keeps it, others get the next free ones
        fork  ///< a device gave numbers twice; both stand, and the keeper has seen it
    };
    Kind kind = Kind::field;
    ThingType type = ThingType::subject;
    Uuid thing;        ///< what it is about; the subject of a fact
    std::string name;  ///< of the field, or the number
    std::optional<EntryId> fact;
    std::optional<FactKind> factKind;
    std::optional<DeviceId> device;  ///< that forked
    std::int64_t times = 0;          ///< how many numbers it gave twice
    std::vector<Choice> choices;     ///< the one that counts now comes first

    /// Eight letters and digits that stay the same until it is settled, on every device.
    [[nodiscard]] std::string key() const;
};

/// In a fixed order: by kind, then by what they are about.
Result<std::vector<Difference>> differences(Book& book);

/// Makes one of the choices count, in one act that undo takes back. Fails with `notFound` when the
/// difference or the choice is no longer there.
Result<ChangeSet> settle(Book& book, const Difference& difference, std::size_t choice);

}  // namespace burrow
