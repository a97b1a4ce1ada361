// A file of species profiles that one keeper gives to another: JSON,
//   {"burrowbook": "species profiles", "version": 1, "profiles": [ ...as in assets/species ]}
// A single profile as in assets/species is read too.
#pragma once

#include <span>

#include "husbandry/profile_file.h"

namespace burrow {

inline constexpr const char* sharedProfilesKind = "species profiles";
inline constexpr int sharedProfilesVersion = 1;
inline constexpr std::uint64_t largestSharedProfiles = 4'000'000;  ///< bytes
inline constexpr std::size_t mostSharedProfiles = 1000;

[[nodiscard]] std::string sharedProfilesText(std::span<const Profile> profiles);

/// All of them, or none: fails with `badInput`, and a message that names the profile by its place in
/// the file, the species and the field; also where one species is there twice, or where a later version
/// wrote the file.
[[nodiscard]] Result<std::vector<Profile>> sharedProfiles(std::string_view text);

}  // namespace burrow
