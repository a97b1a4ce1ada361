// Answers of the planner and the rules behind them in words, the same on every page.
#pragma once

#include <array>

#include "viewmodels/wording.h"

namespace burrow {

/// The order in which pages list the kinds of care: what a keeper asks about first.
inline constexpr std::array careAsShown{Care::feed,      Care::leftovers, Care::water,
                                        Care::damp,      Care::look,      Care::moultCheck,
                                        Care::headcount, Care::measure,   Care::breeding,
                                        Care::rehouse,   Care::quarantine};
static_assert(careAsShown.size() == allCare.size());

/// "Feeding"
[[nodiscard]] QString careText(Care care, const Desk& desk);
/// "Due", "Held", "Waiting", "Not needed"
[[nodiscard]] QString stateText(State state, const Desk& desk);
/// "Opens 12 May, best 14 May, late after 16 May"
[[nodiscard]] QString windowText(const Window& window, const Desk& desk);

/// "5 to 7 days", "cricket"
[[nodiscard]] QString ruleValueText(const Rule& rule, const Desk& desk);
/// "as shipped", "from habit, tree-dwelling", "from you", "from species Grammostola pulchra"; an
/// animal by its number.
[[nodiscard]] QString ruleOriginText(const Rule& rule, const Desk& desk);
/// Whether it is one of the keeper's own values, of whatever scope.
[[nodiscard]] bool isOwnRule(const Rule& rule);

}  // namespace burrow
