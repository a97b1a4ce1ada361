#include "husbandry/stage.h"

#include <algorithm>
#include <cmath>

namespace burrow {
namespace {

bool isMatureMale(const PlanInput& input) {
    if (input.isSeveral()) return false;
    const auto sex = input.subject.sex == Sex::unknown ? input.digest.sexed.value_or(Sex::unknown)
                                                       : input.subject.sex;
    // Hooks and palpal bulbs come with a male's last moult: an ultimate moult tells the sex too.
    return sex != Sex::female && (input.subject.mature || input.digest.hadUltimateMoult);
}

void takeSize(StageJudgement& judged, const PlanInput& input, const Rules& rules) {
    const auto& digest = input.digest;
    judged.span = digest.span;
    if (!digest.carapace) return;
    const auto order = input.profile != nullptr ? input.profile->order : Order::tarantula;
    // The ratios are those of spiders and scorpions: a whip spider's legs are far longer for its carapace.
    if (order == Order::whipSpider || order == Order::vinegaroon) return;
    const bool isScorpion = order == Order::scorpion;
    const auto estimate = *digest.carapace * rules.factor(isScorpion ? "size.body_per_carapace"
                                                                     : "size.span_per_carapace");
    const bool spanIsOlder = !digest.recentMoults.empty() && digest.recentMoults.back().carapace &&
                             !digest.recentMoults.back().span;
    if (!judged.span || (spanIsOlder && estimate > *judged.span)) {
        judged.span = estimate;
        judged.spanEstimated = true;
    }
}

Stage stageBySize(Millimetres span, std::optional<Millimetres> grown, const Rules& rules) {
    const auto slingBelow = grown ? std::min(*grown * rules.factor("stage.sling.below_fraction"),
                                             rules.length("stage.sling.below_always"))
                                  : rules.length("stage.sling.below_unknown");
    const auto adultFrom = grown ? *grown * rules.factor("stage.adult.from_fraction")
                                 : rules.length("stage.adult.from_unknown");
    if (span < slingBelow) return Stage::sling;
    return span < adultFrom ? Stage::juvenile : Stage::adult;
}

Stage stageByAge(int days, const Rules& rules) {
    if (days < rules.days("stage.sling.until_age")) return Stage::sling;
    return days < rules.days("stage.adult.from_age") ? Stage::juvenile : Stage::adult;
}

std::string stageTerm(Stage stage) { return std::string(name(stage)); }

void judgeBySize(StageJudgement& judged, const PlanInput& input, const Rules& rules) {
    std::optional<Millimetres> grown;
    if (input.profile != nullptr) {
        const auto& adult = input.profile->adultSpan.value;
        grown = (adult.least + adult.most) * 0.5;
    }
    judged.basis = judged.spanEstimated ? StageBasis::carapace : StageBasis::size;
    judged.stage = stageBySize(*judged.span, grown, rules);
    judged.smallest =
        judged.stage == Stage::sling && *judged.span < rules.length("stage.smallest.below");
    judged.how.id = judged.spanEstimated ? "stage.how.carapace" : "stage.how.size";
    if (!grown) judged.how.id += "Alone";
    judged.how.arguments = {{"stage", stageTerm(judged.stage)},
                            {"size", std::round(judged.span->value)}};
    if (grown) judged.how.arguments.push_back({"grown", std::round(grown->value)});
}

}  // namespace

std::string_view name(Stage stage) {
    switch (stage) {
        case Stage::sling: return "sling";
        case Stage::juvenile: return "juvenile";
        case Stage::adult: return "adult";
        case Stage::matureMale: return "mature_male";
    }
    return {};
}

RuleName::RuleName(std::string_view family, std::string_view member) {
    const auto add = [this](std::string_view part) {
        const auto fits = std::min(part.size(), text_.size() - size_);
        std::copy_n(part.begin(), fits, text_.begin() + static_cast<std::ptrdiff_t>(size_));
        size_ += fits;
    };
    add(family);
    add(".");
    add(member);
}

RuleName ruleFor(std::string_view family, Stage stage) { return {family, name(stage)}; }

StageJudgement judgeStage(const PlanInput& input, const Rules& rules, CivilDay today) {
    StageJudgement judged;
    takeSize(judged, input, rules);
    const auto& subject = input.subject;
    if (isMatureMale(input) || (subject.mature && !input.isSeveral())) {
        judged.stage = isMatureMale(input) ? Stage::matureMale : Stage::adult;
        judged.basis = StageBasis::maturity;
        judged.how = {"stage.how.maturity", {{"stage", stageTerm(judged.stage)}}};
    } else if (judged.span) {
        judgeBySize(judged, input, rules);
    } else if (subject.hatched) {
        const int age = std::max(0, today - *subject.hatched);
        judged.stage = stageByAge(age, rules);
        judged.basis = StageBasis::age;
        judged.how = {"stage.how.age",
                      {{"stage", stageTerm(judged.stage)}, {"days", std::int64_t{age}}}};
    } else {
        judged.how = {"stage.how.nothing", {{"stage", stageTerm(judged.stage)}}};
    }
    return judged;
}

}  // namespace burrow
