#include "husbandry/rule_table.h"

#include <algorithm>
#include <cstdint>
#include <cstring>
#include <unordered_map>

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
constexpr std::array<std::string_view, 3> counts{"group", "lot", "missing"};
constexpr std::array<std::string_view, 5> feeders{"fruit_fly", "cricket", "locust", "roach",
                                                  "mealworm"};

using enum RuleUnit;
using enum RuleShape;

constexpr std::array families{
    RuleFamily{"feed.interval", sizes, days, range},
    RuleFamily{"feed.factor", {}, factor, number},
    RuleFamily{"feed.meal", {}, factor, range},
    RuleFamily{"feed.after_moult.factor", {}, factor, number},
    RuleFamily{"feed.after_moult.until", {}, fraction, number},
    RuleFamily{"feed.toward_moult", {}, factor, number},
    RuleFamily{"feed.cold", {}, factor, number},
    RuleFamily{"feed.retry", growing, days, range},
    RuleFamily{"feed.retry.longer", {}, factor, number},
    RuleFamily{"feed.retry.longest", {}, factor, number},
    RuleFamily{"hardening", growing, days, range},
    RuleFamily{"premoult.after_refusals", {}, count, number},
    RuleFamily{"premoult.hold", growing, days, number},
    RuleFamily{"premoult.recheck", growing, days, number},
    RuleFamily{"premoult.window", growing, days, number},
    RuleFamily{"premoult.refusal_ratio", {}, ratio, number},
    RuleFamily{"premoult.threshold", {}, fraction, number},
    RuleFamily{"moult.check", growing, days, range},
    RuleFamily{"moult.expected", growing, days, range},
    RuleFamily{"settle", growing, days, number},
    RuleFamily{"leftovers.within", {}, hours, number},
    RuleFamily{"water", waters, days, range},
    RuleFamily{"water.heat", {}, factor, number},
    RuleFamily{"damp", damps, days, range},
    RuleFamily{"damp.heat", {}, factor, number},
    RuleFamily{"look.silent", growing, days, number},
    RuleFamily{"headcount", counts, days, range},
    RuleFamily{"measure.first", {}, days, range},
    RuleFamily{"measure.after_moult", {}, days, range},
    RuleFamily{"measure.several", {}, days, range},
    RuleFamily{"home.floor_spans", {}, ratio, number},
    RuleFamily{"home.width_spans", {}, ratio, number},
    RuleFamily{"home.height_spans", {}, ratio, number},
    RuleFamily{"home.ground_spans", {}, factor, number},
    RuleFamily{"home.ahead", {}, days, number},
    RuleFamily{"quarantine.days", {}, days, range},
    RuleFamily{"breeding.charged", {}, days, range},
    RuleFamily{"breeding.pair_again", {}, days, range},
    RuleFamily{"breeding.sac_expected", {}, days, range},
    RuleFamily{"breeding.check", {}, days, range},
    RuleFamily{"sac.hold", {}, days, number},
    RuleFamily{"sac.pull", {}, days, range},
    RuleFamily{"warmth.fresh", {}, days, number},
    RuleFamily{"warmth.usual", {}, celsius, range},
    RuleFamily{"warmth.cold_by", {}, celsius, number},
    RuleFamily{"warmth.hot_by", {}, celsius, number},
    RuleFamily{"warmth.stop_below", {}, celsius, number},
    RuleFamily{"forecast.interval", growing, days, number},
    RuleFamily{"forecast.spread", {}, fraction, number},
    RuleFamily{"growth.ratio", {}, ratio, number},
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
    UnitRow{factor, "factor", {0.1, 5}, false},    UnitRow{celsius, "celsius", {0, 45}, false},
    UnitRow{prey, "prey", {0, 0}, false},
};

std::vector<std::string> allIds() {
    std::vector<std::string> ids;
    for (const auto& family : families) {
        if (family.members.empty()) ids.emplace_back(family.id);
        for (const auto member : family.members) {
            ids.push_back(std::string(family.id) + "." + std::string(member));
        }
    }
    std::sort(ids.begin(), ids.end());
    return ids;
}

/// Ids differ in their length and at their end: enough to tell nearly all of them apart, and quicker
/// than reading them whole.
struct IdHash {
    std::size_t operator()(std::string_view id) const {
        std::uint64_t tail = 0;
        const auto count = std::min(id.size(), sizeof tail);
        std::memcpy(&tail, id.data() + (id.size() - count), count);
        const auto middle = static_cast<unsigned char>(id.empty() ? '\0' : id[id.size() / 2]);
        return (tail ^ (id.size() << 8U) ^ middle) * 0x9E37'79B9'7F4A'7C15ULL >> 20U;
    }
};

const UnitRow& rowOf(RuleUnit unit) {
    for (const auto& row : units) {
        if (row.unit == unit) return row;
    }
    return units.front();  // unreachable: the table names every unit
}

}  // namespace

std::span<const RuleFamily> ruleFamilies() { return families; }

const std::vector<std::string>& allRuleIds() {
    static const auto ids = allIds();
    return ids;
}

std::optional<std::size_t> ruleIndex(std::string_view ruleId) {
    static const auto places = [] {
        std::unordered_map<std::string_view, std::size_t, IdHash> made;
        for (std::size_t at = 0; at < allRuleIds().size(); ++at) made.emplace(allRuleIds()[at], at);
        return made;
    }();
    const auto found = places.find(ruleId);
    return found == places.end() ? std::nullopt : std::optional(found->second);
}

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
