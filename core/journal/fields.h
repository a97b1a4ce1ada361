// The fields that subjects, enclosures and tags are made of, as the journal holds them.
#pragma once

#include "journal/entry.h"

namespace burrow {

[[nodiscard]] std::string_view name(ThingType type);
[[nodiscard]] std::optional<ThingType> parseThingType(std::string_view text);

/// All fields that differ from those of an empty record.
[[nodiscard]] FieldValues toFields(const Subject& subject);
[[nodiscard]] FieldValues toFields(const Enclosure& enclosure);
[[nodiscard]] FieldValues toFields(const Tag& tag);

/// Only the fields in which `after` differs from `before`: what an edit puts into the journal. A
/// field that was emptied is set to null.
template <class Record>
[[nodiscard]] FieldValues changedFields(const Record& before, const Record& after) {
    const auto old = toFields(before);
    auto changed = toFields(after);
    for (const auto& [name, value] : old) {
        const auto [found, isGone] = changed.try_emplace(name, nullptr);
        if (!isGone && found->second == value) changed.erase(found);
    }
    return changed;
}

/// Unknown fields are passed over and unreadable values count as not set: they come from other
/// versions or other people's files, and one bad value must not hide an animal.
[[nodiscard]] Subject subjectFrom(SubjectId id, const FieldValues& fields);
[[nodiscard]] Enclosure enclosureFrom(EnclosureId id, const FieldValues& fields);
[[nodiscard]] Tag tagFrom(const FieldValues& fields);

/// The identifier under which a tag's fields are kept: the same code is the same thing on every
/// device.
[[nodiscard]] Uuid tagThing(std::string_view code);

}  // namespace burrow
