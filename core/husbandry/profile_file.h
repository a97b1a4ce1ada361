// Reads one species file. Strict: a fact that is missing, has no source, can't be true or has a
// name this version does not know is refused.
#pragma once

#include <string>

#include "base/result.h"
#include "model/profile.h"

namespace burrow {

/// A line of a care sheet holds no more (A5, 10 pt).
inline constexpr std::size_t longestProfileLine = 75;

/// `number` counts files from 1 and is only for messages.
[[nodiscard]] Result<Profile> profileFromJson(const std::string& text, std::size_t number);

}  // namespace burrow
