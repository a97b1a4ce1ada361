// The next step of a pairing: he is charged, pair again, look for a sac, take it.
#include <algorithm>

#include "husbandry/answers.h"

namespace burrow {
namespace {

/// Nobody is brought together while one of them is in quarantine.
std::optional<Closing> pairingClosed(const PlanContext& c) {
    if (auto closing = handsOff(c)) return closing;
    if (!c.input.subject.quarantined) return std::nullopt;
    const auto today = c.day.today;
    const auto since =
        std::min(today, c.input.quarantinedSince.value_or(knownSince(c.input, today)));
    const auto least = c.rules.dayRange("quarantine.days").least;
    return Closing{Because::quarantined, since, std::max(today + 1, since + least)};
}

Verdict after(const PlanContext& c, Because because, CivilDay from, Range<int> gap) {
    auto verdict = inWindow(Care::breeding, because, windowAfter(from, gap), c.day.today);
    verdict.since = from;
    return verdict;
}

Verdict chargedMale(const PlanContext& c) {
    const auto web = *c.input.digest.spermWeb;
    return heldBack(after(c, Because::spermWeb, web, c.rules.dayRange("breeding.charged")),
                    pairingClosed(c));
}

/// Once more within the usual time, then a sac is looked for, time and again until it is there.
Verdict pairedFemale(const PlanContext& c) {
    const auto& digest = c.input.digest;
    const auto paired = *digest.lastPaired;
    const auto again = c.rules.dayRange("breeding.pair_again");
    if (digest.pairings < 2 && c.day.today <= paired + again.most) {
        return heldBack(after(c, Because::pairedOnce, paired, again), pairingClosed(c));
    }
    const auto expected = c.rules.dayRange("breeding.sac_expected");
    auto verdict = after(c, Because::sacExpected, paired, expected);
    const auto looked = digest.lastLooked;
    if (verdict.state == State::due && looked && *looked >= verdict.window->opens) {
        const auto window = windowAfter(*looked, c.rules.dayRange("breeding.check"));
        verdict = inWindow(Care::breeding, Because::sacExpected, window, c.day.today);
        verdict.since = paired;
    }
    return verdict;
}

bool isMale(const PlanContext& c) {
    return c.stage.stage == Stage::matureMale || c.input.subject.sex == Sex::male;
}

Verdict judgeBreeding(const PlanContext& c) {
    const auto& digest = c.input.digest;
    if (digest.sacLaid) {
        return after(c, Because::eggSac, *digest.sacLaid, c.rules.dayRange("sac.pull"));
    }
    if (digest.spermWeb) return chargedMale(c);
    if (isMale(c)) {
        return nothingToDo(Care::breeding, c.stage.stage == Stage::matureMale ? Because::noSpermWeb
                                                                              : Because::notPaired);
    }
    if (digest.lastPaired) return pairedFemale(c);
    return nothingToDo(Care::breeding, Because::notPaired);
}

void sayBreeding(const PlanContext& c, Answer& answer) {
    if (answer.state == State::hold) {
        answer.reason = holdMessage(answer);
        return;
    }
    std::string id = "reason.breeding." + std::string(name(answer.because));
    if (answer.state == State::none) {
        answer.reason = Message(id);
        return;
    }
    id += answer.state == State::due ? ".due" : ".wait";
    answer.reason = sinceMessage(id, daysSince(*answer.since, c.day.today));
    answer.reason.arguments.push_back({"since", *answer.since});
    answer.reason.arguments.push_back({"opens", answer.window->opens});
}

}  // namespace

const CarePart breedingPart{judgeBreeding, sayBreeding};

}  // namespace burrow
