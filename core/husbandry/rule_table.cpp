#include "husbandry/rule_table.h"

namespace burrow {
namespace {

using Members = std::array<std::string_view, 3>;

constexpr Members growing{"sling", "juvenile", "adult"};
constexpr std::array<std::string_view, 4> stages{"sling", "juvenile", "adult", "mature_male"};
constexpr std::array<std::string_view, 5> sizes{"smallest", "sling", "juvenile", "adult",
                                                "mature_male"};
constexpr std::array<std::string_view, 6> portions{"pieces",   "smallest", "sling",
                                                   "juvenile", "adult",    "mature_male"};
constexpr std::array<std::string_view, 5> damps{"sling", "dry", "moderate", "moist", "swamp"};
constexpr std::array<std::string_view, 2> waters{"drip", "dish"};
constexpr std::array<std::string_view, 5> feeders{"fruit_fly", "cricket", "locust", "roach",
                                                  "mealworm"};

using enum RuleUnit;
using enum RuleShape;

constexpr std::array families{
    RuleFamily{"feed.interval", sizes, days, range},
    RuleFamily{"feed.retry", growing, days, range},
    RuleFamily{"hardening", growing, days, range},
    RuleFamily{"premoult.after_refusals", {}, count, number},
    RuleFamily{"premoult.hold", growing, days, number},
    RuleFamily{"premoult.recheck", growing, days, number},
    RuleFamily{"leftovers.within", {}, hours, number},
    RuleFamily{"water", waters, days, range},
    RuleFamily{"damp", damps, days, range},
    RuleFamily{"look.silent", growing, days, number},
    RuleFamily{"stage.smallest.below", {}, millimetres, number},
    RuleFamily{"stage.sling.below_fraction", {}, fraction, number},
    RuleFamily{"stage.sling.below_always", {}, millimetres, number},
    RuleFamily{"stage.sling.below_unknown", {}, millimetres, number},
    RuleFamily{"stage.sling.until_age", {}, days, number},
    RuleFamily{"stage.adult.from_fraction", {}, fraction, number},
    RuleFamily{"stage.adult.from_unknown", {}, millimetres, number},
    RuleFamily{"stage.adult.from_age", {}, days, number},
    RuleFamily{"size.span_per_carapace", {}, ratio, number},
    RuleFamily{"size.body_per_carapace", {}, ratio, number},
    RuleFamily{"prey.fraction", stages, fraction, number},
    RuleFamily{"prey.length", stages, millimetres, number},
    RuleFamily{"prey.count", stages, count, number},
    RuleFamily{"prey.group_share", {}, fraction, number},
    RuleFamily{"prey.smaller.from", {}, count, number},
    RuleFamily{"prey.smaller.factor", {}, fraction, number},
    RuleFamily{"prey.smaller.most", {}, count, number},
    RuleFamily{"prey.pieces.below", {}, millimetres, number},
    RuleFamily{"prey.kind", portions, prey, word},
    RuleFamily{"prey.longest", feeders, millimetres, number},
};

struct UnitRow {
    RuleUnit unit;
    std::string_view name;
    Range<double> limits;
    bool whole;
};

constexpr std::array units{
    UnitRow{days, "days", {1, 4000}, true},        UnitRow{hours, "hours", {1, 240}, true},
    UnitRow{millimetres, "mm", {0.5, 350}, false}, UnitRow{fraction, "fraction", {0.01, 1}, false},
    UnitRow{ratio, "ratio", {1, 20}, false},       UnitRow{count, "count", {1, 100}, true},
    UnitRow{prey, "prey", {0, 0}, false},
};

const UnitRow& rowOf(RuleUnit unit) {
    for (const auto& row : units) {
        if (row.unit == unit) return row;
    }
    return units.front();  // unreachable: the table names every unit
}

}  // namespace

std::span<const RuleFamily> ruleFamilies() { return families; }

const RuleFamily* familyOf(std::string_view ruleId) {
    for (const auto& family : families) {
        if (family.members.empty() && family.id == ruleId) return &family;
        for (const auto member : family.members) {
            const bool fits = ruleId.size() == family.id.size() + 1 + member.size() &&
                              ruleId.starts_with(family.id) && ruleId.ends_with(member) &&
                              ruleId[family.id.size()] == '.';
            if (fits) return &family;
        }
    }
    return nullptr;
}

Range<double> limitsOf(RuleUnit unit) { return rowOf(unit).limits; }
bool isWhole(RuleUnit unit) { return rowOf(unit).whole; }

std::string_view name(RuleUnit unit) { return rowOf(unit).name; }

std::optional<RuleUnit> parseRuleUnit(std::string_view text) {
    for (const auto& row : units) {
        if (row.name == text) return row.unit;
    }
    return std::nullopt;
}

}  // namespace burrow
