// When to look whether it has moulted, or whether its fangs are black again.
#include <algorithm>

#include "husbandry/answers.h"

namespace burrow {
namespace {

/// Looked for again after a gap, from the day on which there was reason to, or it was looked at last.
Verdict lookAgain(const PlanContext& c, Because because, CivilDay reason, const char* family) {
    const auto gap = c.rules.dayRange(ruleFor(family, c.stage.growing()));
    const auto last = c.input.digest.lastLooked;
    const auto window = last && *last >= reason ? windowAfter(*last, gap)
                                                : Window{reason, reason, reason + gap.most};
    auto verdict = inWindow(Care::moultCheck, because, window, c.day.today);
    verdict.since = reason;
    return verdict;
}

/// From the day on which they can be black to the day on which they are taken to be.
Verdict lookAtFangs(const PlanContext& c) {
    const auto moult = *c.input.digest.lastMoult();
    const auto end = *c.closures.hardening;
    const auto hardening = c.rules.dayRange(ruleFor("hardening", c.stage.growing()));
    auto opens = std::min(moult + hardening.least, end);
    if (const auto looked = c.input.digest.lastLooked; looked && *looked >= opens) {
        const auto gap = c.rules.dayRange(ruleFor("moult.check", c.stage.growing()));
        opens = std::min(*looked + gap.least, end);
    }
    auto verdict = inWindow(Care::moultCheck, Because::fangs, {opens, opens, end}, c.day.today);
    verdict.since = moult;
    return verdict;
}

Verdict leaveAlone(const PlanContext& c) {
    const auto opens = *c.closures.eggSac;
    auto verdict = inWindow(Care::moultCheck, Because::eggSac, {opens, opens, opens}, c.day.today);
    verdict.since = c.input.digest.sacLaid;
    return verdict;
}

Verdict judgeSeveral(const PlanContext& c) {
    if (c.closures.phaseOn(c.day.today) != Phase::premoult) {
        return nothingToDo(Care::moultCheck, Because::several);
    }
    return lookAgain(c, Because::memberPremoult, *c.input.digest.premoultSign, "moult.check");
}

Verdict judgeMoultCheck(const PlanContext& c) {
    const auto& digest = c.input.digest;
    const auto today = c.day.today;
    if (c.input.isSeveral()) return judgeSeveral(c);
    switch (c.closures.phaseOn(today)) {
        case Phase::hardening: return lookAtFangs(c);
        case Phase::premoult:
            return lookAgain(c, Because::premoult, *digest.premoultSign, "moult.check");
        case Phase::likelyPremoult:
            return lookAgain(c, Because::likelyPremoult, digest.lastOffer->day, "moult.check");
        case Phase::between: break;
    }
    if (c.closures.eggSac && today < *c.closures.eggSac) return leaveAlone(c);
    if (c.stage.stage == Stage::matureMale) {
        return nothingToDo(Care::moultCheck, Because::lastMoultOver);
    }
    if (!c.moult) return nothingToDo(Care::moultCheck, Because::noMoultKnown);
    return lookAgain(c, Because::moultExpected, c.moult->lookFrom, "moult.expected");
}

Message reasonOf(const PlanContext& c, const Verdict& verdict) {
    const std::string id = "reason.moult_check." + std::string(name(verdict.because));
    if (verdict.state == State::none) return Message(id);
    const std::string ending = verdict.state == State::due ? ".due" : ".wait";
    Message reason(id + ending);
    if (verdict.because == Because::fangs) {
        reason = sinceMessage(id + ending, daysSince(*verdict.since, c.day.today));
    }
    if (verdict.because == Because::moultExpected) {
        reason.arguments.push_back({"median", c.moult->median});
    }
    reason.arguments.push_back({"since", *verdict.since});
    reason.arguments.push_back({"opens", verdict.window->opens});
    return reason;
}

void sayMoultCheck(const PlanContext& c, Answer& answer) { answer.reason = reasonOf(c, answer); }

}  // namespace

const CarePart moultCheckPart{judgeMoultCheck, sayMoultCheck};

}  // namespace burrow
