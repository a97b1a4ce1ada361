// Reads the rules as they are shipped, and the values that a keeper types.
#pragma once

#include <span>
#include <vector>

#include "base/result.h"
#include "husbandry/rule_kind.h"
#include "husbandry/rules.h"

namespace burrow {

/// A shipped value: for every animal, or for those of a kind.
struct ShippedRule {
    std::size_t at = 0;  ///< ruleIndex
    RuleKind kind;
    Rule rule;
};

/// Complete: every rule has a value for all. Those for all come first, in the order of ruleIndex;
/// the rest by growing weight of their kind. Fails as Rules::fromJson does.
Result<std::vector<ShippedRule>> shippedRules(std::span<const std::string> files);

/// The key and the value of a rule of the keeper's own.
struct TypedRule {
    RuleKey key;
    std::size_t at = 0;
    RuleValue value;
};
Result<TypedRule> typedRule(const OwnRule& own);

}  // namespace burrow
