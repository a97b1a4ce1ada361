// The rules of thumb as data: intervals, thresholds and prey sizes, each with where it comes from,
// and each open to the keeper's own value: for everyone, a species, a place or one animal.
#pragma once

#include <map>
#include <memory>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "base/result.h"
#include "base/units.h"
#include "husbandry/rule_scope.h"

namespace burrow {

/// What a rule's number means. `fraction` lies between 0 and 1, `ratio` is 1 or more, `factor` may
/// make longer or shorter; `celsius` is a temperature or a difference; `prey` the name of a feeder.
enum class RuleUnit { days, hours, millimetres, fraction, ratio, factor, count, celsius, prey };

/// Where a value comes from, from the general to the special; the last that says anything holds.
/// `assets`: as shipped; `kind`: as shipped for its order, habit or region; `keeper`: the keeper's,
/// for everyone; the rest: the keeper's for a species, a place or one animal.
enum class RuleOrigin { assets, kind, keeper, species, place, animal };

using RuleValue = std::variant<double, Range<double>, std::string>;

/// In files: "days", "mm".
[[nodiscard]] std::string_view name(RuleUnit unit);
/// In files: "shipped", "kind", "you", "species", "place", "animal".
[[nodiscard]] std::string_view name(RuleOrigin origin);
/// As a keeper types it: "6", "5-7", "cricket".
[[nodiscard]] std::string valueText(const RuleValue& value);

struct Rule {
    std::string id;  ///< "feed.interval.sling"
    RuleValue value;
    RuleUnit unit = RuleUnit::days;
    std::string source;  ///< a citation, or "common practice, no source"
    std::string says;    ///< what it rules, in one sentence without its number
    RuleOrigin origin = RuleOrigin::assets;
    std::string scope;  ///< the kind ("arboreal"), species, place or animal it is for, if any

    friend bool operator==(const Rule&, const Rule&) = default;
};

/// A keeper's own value as the book holds it: the key (rule_scope.h) and what was typed.
using OwnRule = std::pair<std::string, std::string>;

/// Which rules were asked for, in the order in which they first were.
struct RuleTrace {
    std::vector<std::size_t> asked;
};

/// A complete set of rules: every rule the planner asks for is there, with its unit and a possible
/// value. Asking for one under an id that no rule has is a mistake in the program and ends it.
/// Shares what it was made from with its copies; safe to read from any thread.
class Rules {
public:
    /// Fails with `badInput`, and a message that names the rule, for one that is missing, unknown,
    /// said twice, without source or sentence, or with a value that can't be.
    static Result<Rules> fromJson(std::span<const std::string> files);

    /// The same rules with the keeper's own values: "6" or "5-7" ("5 to 7") for a range, a number,
    /// or the name of a feeder. Refuses all of them when one is unknown or impossible.
    [[nodiscard]] Result<Rules> with(std::span<const OwnRule> own) const;
    /// The same, but passes over what is unknown or impossible; the keys of those go to
    /// `passedOver` where that is not null.
    [[nodiscard]] Rules withPossible(std::span<const OwnRule> own,
                                     std::vector<std::string>* passedOver = nullptr) const;

    /// The rules that hold for one subject: the most special value of each.
    [[nodiscard]] Rules of(const RuleSubject& subject) const;
    /// Every value there is of a rule for that subject, the one that holds first, the shipped one
    /// last: what would hold when the first is taken back. Empty for an unknown id.
    [[nodiscard]] std::vector<Rule> layers(std::string_view id, const RuleSubject& subject) const;
    /// All of the keeper's own values, of every scope.
    [[nodiscard]] std::vector<Rule> ownRules() const;
    /// The same rules, noting in `trace` which are asked for. `trace` must outlive what is returned.
    [[nodiscard]] Rules tracedInto(RuleTrace& trace) const;

    /// [least, most] whole days.
    [[nodiscard]] Range<int> dayRange(std::string_view id) const;
    [[nodiscard]] int days(std::string_view id) const;
    [[nodiscard]] int hours(std::string_view id) const;
    [[nodiscard]] int count(std::string_view id) const;
    [[nodiscard]] Millimetres length(std::string_view id) const;
    [[nodiscard]] Celsius warmth(std::string_view id) const;
    /// A fraction, a ratio or a factor.
    [[nodiscard]] double factor(std::string_view id) const;
    [[nodiscard]] Range<double> range(std::string_view id) const;
    [[nodiscard]] const std::string& prey(std::string_view id) const;

    [[nodiscard]] RuleOrigin origin(std::string_view id) const;
    [[nodiscard]] const Rule* find(std::string_view id) const;
    /// In alphabetical order of their ids.
    [[nodiscard]] std::vector<const Rule*> all() const;

    /// Whether every rule has the same value in both, wherever it comes from.
    [[nodiscard]] bool sameValues(const Rules& other) const;

private:
    struct Table;

    Rules() = default;
    [[nodiscard]] const Rule& at(std::string_view id) const;
    void settle();

    std::shared_ptr<const Table> table_;
    std::vector<const Rule*> holding_;  // by ruleIndex; into *table_
    RuleTrace* trace_ = nullptr;
};

}  // namespace burrow
