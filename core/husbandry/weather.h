// What the logged temperature means for one species: too cold to eat, cold, as it likes it, hot.
#pragma once

#include <cstdint>

#include "husbandry/input.h"
#include "husbandry/rules.h"

namespace burrow {

enum class Weather : std::uint8_t { unknown, tooCold, cold, usual, hot };

/// In files: "too_cold".
[[nodiscard]] std::string_view name(Weather weather);

/// `unknown` where nothing was logged within the last days that the rules count as fresh. Judged
/// against the species' own range, else the rules' for an unknown one.
[[nodiscard]] Weather weatherOf(const PlanInput& input, const Rules& rules, CivilDay today);

}  // namespace burrow
