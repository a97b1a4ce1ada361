// Sizes over an animal's moults, and what the room's own pairs of carapace and leg span say of its species.
#pragma once

#include "growth/measures.h"
#include "husbandry/profiles.h"
#include "journal/roster.h"

namespace burrow {

struct Sizes {
    std::vector<growth::Measured> carapaces;  ///< oldest first
    std::vector<growth::Measured> spans;
    /// Of everyone of its species in the book, also those who are gone: one for each skin. The animals
    /// count for all their skins, so an interval is rather too narrow where one animal gave most pairs.
    std::vector<growth::SizePair> pairs;
    std::optional<growth::SpanByCarapace> spanByCarapace;
    /// For the last carapace.
    std::optional<growth::SpanByCarapace::Estimate> estimate;
    /// Why there is no line, or what it says of the last carapace.
    Message says;
};

/// What the pairs say of that carapace, and that it is a guess where it lies outside of theirs; or why they
/// say nothing.
[[nodiscard]] std::vector<Message> saidOf(const Sizes& sizes, Millimetres carapace);

/// Nothing where the book has no such subject.
Result<std::optional<Sizes>> sizesOf(Book& book, SubjectId subject, const Profiles& profiles);

}  // namespace burrow
