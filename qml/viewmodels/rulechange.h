// A change of one of the keeper's own values of a rule, ready for the desk.
#pragma once

#include "room/own_rules.h"
#include "viewmodels/desk.h"

namespace burrow {

/// One act that can be undone.
[[nodiscard]] Deed deedOf(const RuleChange& change, const Room& room);

}  // namespace burrow
