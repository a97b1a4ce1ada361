// Which rules there are, with the unit and the kind of value each takes.
#pragma once

#include <array>
#include <optional>
#include <span>
#include <string_view>

#include "husbandry/rules.h"

namespace burrow {

enum class RuleShape { number, range, word };

/// Rules that differ only in the last part of their id; a lone rule has no members.
struct RuleFamily {
    std::string_view id;
    std::span<const std::string_view> members;
    RuleUnit unit;
    RuleShape shape;
};

[[nodiscard]] std::span<const RuleFamily> ruleFamilies();
[[nodiscard]] const RuleFamily* familyOf(std::string_view ruleId);
/// Every rule's id, in alphabetical order.
[[nodiscard]] const std::vector<std::string>& allRuleIds();
/// Its position in allRuleIds(); nothing for an id that no rule has.
[[nodiscard]] std::optional<std::size_t> ruleIndex(std::string_view ruleId);

/// Numbers outside can't be meant, in the rule's unit.
[[nodiscard]] Range<double> limitsOf(RuleUnit unit);
/// Whether the unit counts in whole numbers.
[[nodiscard]] bool isWhole(RuleUnit unit);
[[nodiscard]] std::optional<RuleUnit> parseRuleUnit(std::string_view text);

}  // namespace burrow
