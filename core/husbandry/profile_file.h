// Reads one species file, and writes one. Strict: a fact that is missing, has no source, can't be true
// or has a name this version does not know is refused.
#pragma once

#include <nlohmann/json_fwd.hpp>
#include <string>

#include "base/result.h"
#include "model/profile.h"

namespace burrow {

/// A line of a care sheet holds no more (A5, 10 pt). In bytes, like the other limits here.
inline constexpr std::size_t longestProfileLine = 75;
inline constexpr std::size_t longestProfileSource = 200;
/// Of old names, and of names in the trade.
inline constexpr std::size_t mostProfileNames = 20;

/// `number` counts files from 1 and is only for messages.
[[nodiscard]] Result<Profile> profileFromJson(const std::string& text, std::size_t number);
[[nodiscard]] Result<Profile> profileFromJson(const nlohmann::json& object, std::size_t number);

/// As the files that are shipped: reads back as the same profile but for its origin.
[[nodiscard]] std::string profileText(const Profile& profile);

}  // namespace burrow
