#include "husbandry/phase.h"

#include <algorithm>

#include "husbandry/premoult.h"

namespace burrow {
namespace {

/// A refusal beyond those that made a moult likely: one more reason to wait longer.
int furtherRefusals(const Digest& digest, const Rules& rules) {
    return std::max(0, digest.refusalsInARow - rules.count("premoult.after_refusals"));
}

/// A mature male fasts without a moult to come, and a group does not refuse as one.
bool refusalsTell(const PlanInput& input, const StageJudgement& stage, const Rules& rules,
                  double soon) {
    if (stage.stage == Stage::matureMale || input.isSeveral()) return false;
    const int refusals = input.digest.refusalsInARow;
    if (refusals >= rules.count("premoult.after_refusals")) return true;
    return refusals > 0 && soon >= rules.factor("premoult.threshold");
}

void addSettling(Closures& closures, const PlanInput& input, const StageJudgement& stage,
                 const Rules& rules) {
    closures.settlingSince = std::max(input.digest.lastRehoused, input.subject.acquired);
    if (!closures.settlingSince) return;
    closures.settling = *closures.settlingSince + rules.days(ruleFor("settle", stage.growing()));
}

}  // namespace

std::string_view name(Phase phase) {
    switch (phase) {
        case Phase::between: return "between";
        case Phase::hardening: return "hardening";
        case Phase::premoult: return "premoult";
        case Phase::likelyPremoult: return "likely_premoult";
    }
    return {};
}

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

std::optional<CivilDay> Closures::last(CivilDay today) const {
    const auto settled = hasCome(today) ? settling : std::nullopt;
    return std::max({hardening, premoult, refusals, eggSac, settled});
}

Closures closuresOf(const PlanInput& input, const StageJudgement& stage, const Rules& rules,
                    double soon) {
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
    if (digest.lastOffer && refusalsTell(input, stage, rules, soon)) {
        const int wait = rules.days(ruleFor("premoult.recheck", growing));
        closures.refusals =
            digest.lastOffer->day + lengthened(wait, furtherRefusals(digest, rules), rules);
    }
    if (digest.sacLaid) closures.eggSac = *digest.sacLaid + rules.days("sac.hold");
    addSettling(closures, input, stage, rules);
    return closures;
}

std::optional<Closing> closingOn(const Closures& closures, const PlanInput& input, CivilDay today) {
    const auto& digest = input.digest;
    const auto open = [&](const std::optional<CivilDay>& opens) {
        return !opens || *opens <= today;
    };
    if (!input.isSeveral()) {
        switch (closures.phaseOn(today)) {
            case Phase::hardening:
                return Closing{Because::hardening, *digest.lastMoult(), *closures.hardening};
            case Phase::premoult:
                return Closing{Because::premoult, *digest.premoultSign, *closures.premoult};
            case Phase::likelyPremoult:
            case Phase::between: break;
        }
        if (!open(closures.eggSac)) {
            return Closing{Because::eggSac, *digest.sacLaid, *closures.eggSac};
        }
        if (!open(closures.refusals)) {
            return Closing{Because::likelyPremoult, digest.lastOffer->day, *closures.refusals};
        }
    }
    if (closures.hasCome(today) && !open(closures.settling)) {
        return Closing{Because::settling, *closures.settlingSince, *closures.settling};
    }
    return std::nullopt;
}

}  // namespace burrow
