// The rules of thumb as data: intervals, thresholds and prey sizes, each with where it comes from,
// and each open to the keeper's own value.
#pragma once

#include <map>
#include <span>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "base/result.h"
#include "base/units.h"
#include "model/profile.h"

namespace burrow {

/// What a rule's number means. `fraction` lies between 0 and 1, `ratio` may be above 1; `prey` is
/// the name of a feeder.
enum class RuleUnit { days, hours, millimetres, fraction, ratio, count, prey };

enum class RuleOrigin { assets, keeper };

using RuleValue = std::variant<double, Range<double>, std::string>;

/// In files: "days", "mm".
[[nodiscard]] std::string_view name(RuleUnit unit);
/// As a keeper types it: "6", "5-7", "cricket".
[[nodiscard]] std::string valueText(const RuleValue& value);

struct Rule {
    std::string id;  ///< "feed.interval.sling"
    RuleValue value;
    RuleUnit unit = RuleUnit::days;
    std::string source;  ///< a citation, or "common practice, no source"
    std::string says;    ///< what it rules, in one sentence without its number
    RuleOrigin origin = RuleOrigin::assets;
};

/// A complete set of rules: every rule the planner asks for is there, with its unit and a possible
/// value. Asking for one under an id that no rule has is a mistake in the program and ends it.
class Rules {
public:
    /// Fails with `badInput`, and a message that names the rule, for one that is missing, unknown,
    /// said twice, without source or sentence, or with a value that can't be.
    static Result<Rules> fromJson(std::span<const std::string> files);

    /// The same rules with the keeper's own values: "6" or "5-7" ("5 to 7") for a range, a number,
    /// or the name of a feeder. Refuses all of them when one is unknown or impossible.
    [[nodiscard]] Result<Rules> with(
        std::span<const std::pair<std::string, std::string>> overrides) const;

    /// [least, most] whole days.
    [[nodiscard]] Range<int> dayRange(std::string_view id) const;
    [[nodiscard]] int days(std::string_view id) const;
    [[nodiscard]] int hours(std::string_view id) const;
    [[nodiscard]] int count(std::string_view id) const;
    [[nodiscard]] Millimetres length(std::string_view id) const;
    /// A fraction or a ratio.
    [[nodiscard]] double factor(std::string_view id) const;
    [[nodiscard]] const std::string& prey(std::string_view id) const;

    [[nodiscard]] RuleOrigin origin(std::string_view id) const;
    [[nodiscard]] const Rule* find(std::string_view id) const;
    [[nodiscard]] std::vector<const Rule*> all() const;

private:
    [[nodiscard]] const Rule& at(std::string_view id) const;

    std::map<std::string, Rule, std::less<>> rules_;
};

}  // namespace burrow
