#include "husbandry/phase.h"

#include <algorithm>

namespace burrow {

Phase Closures::phaseOn(CivilDay today) const {
    if (hardening && today < *hardening) return Phase::hardening;
    if (premoult && today < *premoult) return Phase::premoult;
    if (refusals && today < *refusals) return Phase::likelyPremoult;
    return Phase::between;
}

CivilDay Closures::endOf(Phase phase) const {
    if (phase == Phase::hardening) return hardening.value();
    return phase == Phase::premoult ? premoult.value() : refusals.value();
}

std::optional<CivilDay> Closures::last() const { return std::max({hardening, premoult, refusals}); }

Closures closuresOf(const PlanInput& input, const StageJudgement& stage, const Rules& rules) {
    const auto& digest = input.digest;
    const auto growing = stage.growing();
    Closures closures;
    if (const auto moult = digest.lastMoult()) {
        closures.hardening = *moult + rules.dayRange(ruleFor("hardening", growing)).most;
        if (digest.fangsBlack) {
            closures.hardening = std::min(*closures.hardening, *digest.fangsBlack);
        }
    }
    if (digest.lastPremoultSign) {
        closures.premoult =
            *digest.lastPremoultSign + rules.days(ruleFor("premoult.hold", growing));
    }
    // A mature male fasts without a moult to come, and a group does not refuse as one.
    const bool refusalsTell = stage.stage != Stage::matureMale && !input.isSeveral() &&
                              digest.refusalsInARow >= rules.count("premoult.after_refusals");
    if (refusalsTell && digest.lastOffer) {
        closures.refusals =
            digest.lastOffer->day + rules.days(ruleFor("premoult.recheck", growing));
    }
    return closures;
}

}  // namespace burrow
