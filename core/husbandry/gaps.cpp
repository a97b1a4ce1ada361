#include "husbandry/gaps.h"

namespace burrow {
namespace {

std::string_view dampRule(Damp damp) {
    switch (damp) {
        case Damp::dry: return "damp.dry";
        case Damp::moderate: return "damp.moderate";
        case Damp::moist: return "damp.moist";
        case Damp::swamp: return "damp.swamp";
    }
    return "damp.moderate";
}

}  // namespace

Range<int> mealGap(const StageJudgement& stage, const Rules& rules) {
    if (stage.smallest) return rules.dayRange("feed.interval.smallest");
    return rules.dayRange(ruleFor("feed.interval", stage.stage));
}

Range<int> waterGap(const StageJudgement& stage, const Rules& rules) {
    return rules.dayRange(stage.stage == Stage::sling ? "water.drip" : "water.dish");
}

Range<int> dampGap(const StageJudgement& stage, const Profile* profile, const Rules& rules) {
    const auto damp = profile != nullptr ? profile->damp.value : Damp::moderate;
    const auto grown = rules.dayRange(dampRule(damp));
    if (stage.stage != Stage::sling) return grown;
    const auto sling = rules.dayRange("damp.sling");
    return sling.most < grown.most ? sling : grown;
}

int usual(Range<int> gap) { return (gap.least + gap.most) / 2; }

}  // namespace burrow
