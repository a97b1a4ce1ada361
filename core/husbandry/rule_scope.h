// Whom a keeper's own value of a rule is for, and the key it is kept under in the book:
//   feed.factor                              everyone
//   feed.factor@species:Brachypelma hamorii  a species, by any of its names
//   feed.factor@place:Nursery                a place
//   feed.factor@animal:017f22e2-79b0-...     one subject
#pragma once

#include <optional>
#include <string>
#include <string_view>

#include "base/ids.h"
#include "model/place.h"
#include "model/profile.h"

namespace burrow {

enum class RuleScope { everyone, species, place, animal };

/// In keys: "species".
[[nodiscard]] std::string_view name(RuleScope scope);

struct RuleKey {
    std::string rule;
    RuleScope scope = RuleScope::everyone;
    std::string of;  ///< the species, place or animal; empty for everyone

    [[nodiscard]] std::string text() const;
    /// Nothing for an unknown scope, an empty or overlong name, or an animal that is no identifier.
    [[nodiscard]] static std::optional<RuleKey> parse(std::string_view text);

    friend bool operator==(const RuleKey&, const RuleKey&) = default;
};

/// Longer names of a species or a place are no keys.
inline constexpr std::size_t longestScopeName = 200;

/// What decides which values hold for a subject. Owns nothing.
struct RuleSubject {
    SubjectId id;
    std::string_view species;  ///< as recorded
    const Place& place;
    const Profile* profile = nullptr;
};

/// How well a written place fits one: 0 not at all, else the more the narrower. A lone word means
/// the room, the rack or the shelf of that name; with slashes every part that is set must be the
/// same (Place::parse). Case does not count.
[[nodiscard]] int placeFit(std::string_view written, const Place& place);

}  // namespace burrow
