// Species profiles of the keeper's own. The book holds each as a setting, "profile." and the valid name,
// whose value is the profile as text: so they are undone, merged and asked about like every other value.
#pragma once

#include <memory>
#include <span>

#include "husbandry/profile_lines.h"
#include "husbandry/profiles.h"
#include "journal/roster.h"

namespace burrow {

inline constexpr std::size_t mostOwnProfiles = 1000;

struct OwnProfiles {
    std::vector<Profile> profiles;  ///< in the order of their valid names
    std::vector<std::string>
        unreadable;  ///< species whose profile this version can't read: not used
};
[[nodiscard]] OwnProfiles ownProfiles(const RoomInfo& info);

/// The shipped ones and the keeper's own together, as Profiles::with() makes them. `shipped` must outlive
/// what is given where there are none of the keeper's own.
[[nodiscard]] std::shared_ptr<const Profiles> withOwnProfiles(const Profiles& shipped,
                                                              const RoomInfo& info);

struct KeptProfiles {
    std::vector<std::string> added;     ///< valid names; also where a shipped one is replaced
    std::vector<std::string> replaced;  ///< where the book had one of the keeper's own
    std::vector<std::string> same;      ///< are in the book already: nothing is written for them
    ChangeSet changes;
};

/// Writes all of them in one act, or none: fails with `badInput` for a profile that a file could not
/// hold, for a name that stands for two species, and for too many. `insteadOf` is the valid name under
/// which the only one of them stood before it was given another.
Result<KeptProfiles> keepProfiles(Book& book, const Profiles& shipped,
                                  std::span<const Profile> profiles,
                                  const std::string& insteadOf = {});

/// The shipped profile of that species counts again, where there is one. Fails with `notFound` where the
/// book has none of that name.
Result<ChangeSet> dropProfile(Book& book, const std::string& species);

/// The species whose profile of the keeper's own a setting of the book holds; nothing for other settings.
[[nodiscard]] std::optional<std::string> speciesOfSetting(std::string_view name);
/// What each of several versions of a profile says where they say different things; nothing for a version
/// that can't be read.
[[nodiscard]] std::vector<std::vector<ProfileLine>> differingLines(
    std::span<const std::string> versions);

}  // namespace burrow
