// Records as JSON for scripts and as lines for people.
#pragma once

#include "room/room.h"
#include "terminal/console.h"

namespace burrow::terminal {

/// {tag, code, species, place, care, state, because, priority, opens, best, late, amount,
/// reason: {id, args}, text}
[[nodiscard]] nlohmann::json toJson(const Resident& resident, const Answer& answer,
                                    const Console& console);
/// "Feed. Ate 9 days ago, usual gap is 8 (1 cricket, 14 mm)"
[[nodiscard]] std::string sentence(const Resident& resident, const Answer& answer,
                                   const Console& console);
/// {id, value, unit, from, scope, source, says}
[[nodiscard]] nlohmann::json toJson(const Rule& rule);
/// "from you, for Nursery"
[[nodiscard]] std::string originText(const Rule& rule, const Console& console);
/// {id, at, day, event, ...its fields}
[[nodiscard]] nlohmann::json toJson(const Fact& fact);
/// "8 May  offered  prey=cricket outcome=ate"
[[nodiscard]] std::string line(const Fact& fact, const Console& console);
/// Everything of one subject but its history.
[[nodiscard]] nlohmann::json toJson(const Resident& resident, const Console& console);

}  // namespace burrow::terminal
