// Counting a group or a lot, measuring, and the end of a quarantine.
#include <algorithm>

#include "husbandry/answers.h"

namespace burrow {
namespace {

/// "reason.headcount.counted.wait", with the days since and the day it opens.
Message reasonAfter(const PlanContext& c, const Verdict& verdict) {
    const std::string id =
        "reason." + std::string(name(verdict.care)) + "." + std::string(name(verdict.because));
    if (verdict.state == State::none) return Message(id);
    const std::string ending = verdict.state == State::due ? ".due" : ".wait";
    auto reason = sinceMessage(id + ending, daysSince(*verdict.since, c.day.today));
    reason.arguments.push_back({"since", *verdict.since});
    reason.arguments.push_back({"opens", verdict.window->opens});
    return reason;
}

Verdict after(Care care, Because because, CivilDay from, Range<int> gap, CivilDay today) {
    auto verdict = inWindow(care, because, windowAfter(from, gap), today);
    verdict.since = from;
    return verdict;
}

// --- heads ---------------------------------------------------------------------------------------

Range<int> countGap(const PlanContext& c) {
    return c.rules.dayRange(c.input.subject.form == Form::lot ? "headcount.lot"
                                                              : "headcount.group");
}

Verdict judgeHeadcount(const PlanContext& c) {
    const auto& digest = c.input.digest;
    const auto today = c.day.today;
    if (!c.input.isSeveral()) return nothingToDo(Care::headcount, Because::single);
    if (!digest.lastSeen) {
        return after(Care::headcount, Because::never, knownSince(c.input, today), countGap(c),
                     today);
    }
    const int seen = digest.lastSeenCount.value_or(0);
    const bool isShort = seen < c.input.subject.headcount;
    auto verdict =
        isShort ? after(Care::headcount, Because::countedFewer, *digest.lastSeen,
                        c.rules.dayRange("headcount.missing"), today)
                : after(Care::headcount, Because::counted, *digest.lastSeen, countGap(c), today);
    verdict.times = seen;
    return verdict;
}

void sayHeadcount(const PlanContext& c, Answer& answer) {
    answer.reason = reasonAfter(c, answer);
    answer.reason.arguments.push_back({"seen", std::int64_t{answer.times}});
    answer.reason.arguments.push_back({"count", std::int64_t{c.input.subject.headcount}});
}

// --- size ----------------------------------------------------------------------------------------

/// It grows only when it moults: a size is wanted once, and again after every moult without one.
Verdict judgeSize(const PlanContext& c) {
    const auto& digest = c.input.digest;
    const auto today = c.day.today;
    // One of many says little, and costs a disturbance: their age will do.
    const bool ageWillDo = c.input.isSeveral() && c.input.subject.hatched && !digest.sizedOn;
    if (ageWillDo) return nothingToDo(Care::measure, Because::several);
    if (!digest.sizedOn) {
        return after(Care::measure, Because::unmeasured, knownSince(c.input, today),
                     c.rules.dayRange("measure.first"), today);
    }
    if (c.input.isSeveral()) {
        return after(Care::measure, Because::measured, *digest.sizedOn,
                     c.rules.dayRange("measure.several"), today);
    }
    const auto moult = digest.lastMoult();
    if (!moult || *moult <= *digest.sizedOn) {
        return nothingToDo(Care::measure, Because::measured);
    }
    const auto from = c.closures.hardening.value_or(*moult);
    const auto gap = c.rules.dayRange("measure.after_moult");
    auto verdict = inWindow(Care::measure, Because::grownSince,
                            {from, from + gap.least, from + gap.most}, today);
    verdict.since = moult;
    return verdict;
}

Verdict judgeMeasure(const PlanContext& c) { return heldBack(judgeSize(c), handsOff(c)); }

void sayMeasure(const PlanContext& c, Answer& answer) {
    answer.reason = answer.state == State::hold ? holdMessage(answer) : reasonAfter(c, answer);
    if (answer.state == State::none && c.input.digest.sizedOn) {
        answer.reason.arguments.push_back({"since", *c.input.digest.sizedOn});
    }
}

// --- quarantine ----------------------------------------------------------------------------------

Verdict judgeQuarantine(const PlanContext& c) {
    if (!c.input.subject.quarantined) {
        return nothingToDo(Care::quarantine, Because::notQuarantined);
    }
    const auto today = c.day.today;
    const auto since =
        std::min(today, c.input.quarantinedSince.value_or(knownSince(c.input, today)));
    return after(Care::quarantine, Because::quarantined, since, c.rules.dayRange("quarantine.days"),
                 today);
}

void sayQuarantine(const PlanContext& c, Answer& answer) { answer.reason = reasonAfter(c, answer); }

}  // namespace

const CarePart headcountPart{judgeHeadcount, sayHeadcount};
const CarePart measurePart{judgeMeasure, sayMeasure};
const CarePart quarantinePart{judgeQuarantine, sayQuarantine};

}  // namespace burrow
