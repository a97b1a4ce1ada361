#include <algorithm>

#include "husbandry/answers.h"
#include "husbandry/prey.h"

namespace burrow {
namespace {

/// The part of the record that the next meal follows from.
enum class Basis { never, ate, refused, uneaten, moulted };

struct Next {
    Basis basis = Basis::never;
    CivilDay since;  ///< the day of the meal, refusal or moult
    Window window;
};

/// Where two reasons set a window, neither may be met too soon.
Window laterOf(const Window& a, const Window& b) {
    return {std::max(a.opens, b.opens), std::max(a.best, b.best), std::max(a.late, b.late)};
}

/// Food was held back until that day: it is wanted at once, and late after one usual gap.
Window windowFrom(CivilDay day, Range<int> gap) { return {day, day, day + usual(gap)}; }

Basis basisOf(const PlanInput& input) {
    const auto& digest = input.digest;
    const auto moult = input.isSeveral() ? std::nullopt : digest.lastMoult();
    const auto isSinceMoult = [&](const Meal& meal) { return !moult || meal.day >= *moult; };
    if (digest.refusalsInARow > 0) return Basis::refused;
    if (digest.lastOffer && digest.lastOffer->outcome == Outcome::leftIn &&
        isSinceMoult(*digest.lastOffer)) {
        return Basis::uneaten;
    }
    if (digest.lastAccepted && isSinceMoult(*digest.lastAccepted)) return Basis::ate;
    return moult ? Basis::moulted : Basis::never;
}

Next nextMeal(const PlanContext& c) {
    const auto& digest = c.input.digest;
    const auto gap = mealGap(c.stage, c.rules);
    Next next{basisOf(c.input), knownSince(c.input, c.day.today), {}};
    switch (next.basis) {
        case Basis::never: next.window = windowFrom(next.since, gap); break;
        case Basis::ate:
            next.since = digest.lastAccepted->day;
            next.window = windowAfter(next.since, gap);
            break;
        case Basis::moulted:
            next.since = *digest.lastMoult();
            next.window = windowFrom(c.closures.hardening.value_or(next.since), gap);
            break;
        case Basis::refused:
        case Basis::uneaten: {
            next.since = digest.lastOffer->day;
            const auto retry = c.rules.dayRange(ruleFor("feed.retry", c.stage.growing()));
            next.window = windowAfter(next.since, retry);
            // Refusing between two meals is no reason to be offered the next one sooner.
            if (digest.lastAccepted) {
                next.window = laterOf(next.window, windowAfter(digest.lastAccepted->day, gap));
            }
            break;
        }
    }
    if (const auto last = c.closures.last(); last && !c.input.isSeveral()) {
        next.window = laterOf(next.window, windowFrom(*last, gap));
    }
    return next;
}

// --- why -----------------------------------------------------------------------------------------

Message hardeningReason(const PlanContext& c) {
    const auto moult = *c.input.digest.lastMoult();
    const int days = daysSince(moult, c.day.today);
    const auto soonest = c.rules.dayRange(ruleFor("hardening", c.stage.growing())).least;
    auto reason =
        sinceMessage(days >= soonest ? "reason.feed.checkFangs" : "reason.feed.hardening", days);
    reason.arguments.push_back({"opens", *c.closures.hardening});
    return reason;
}

Message holdReason(const PlanContext& c, Phase phase) {
    const auto& digest = c.input.digest;
    const auto opens = c.closures.endOf(phase);
    if (phase == Phase::hardening) return hardeningReason(c);
    if (phase == Phase::premoult) {
        return {"reason.feed.premoult", {{"since", *digest.premoultSign}, {"opens", opens}}};
    }
    return {"reason.feed.likelyPremoult",
            {{"times", std::int64_t{digest.refusalsInARow}}, {"opens", opens}}};
}

std::string refusedId(int times) {
    if (times == 1) return "reason.feed.refusedOnce";
    return times == 2 ? "reason.feed.refusedTwice" : "reason.feed.refusedOften";
}

/// One member of a group is soft or about to moult: the others still eat.
std::optional<Message> memberReason(const PlanContext& c) {
    if (!c.input.isSeveral()) return std::nullopt;
    switch (c.closures.phaseOn(c.day.today)) {
        case Phase::hardening:
            return sinceMessage("reason.feed.memberMoulted",
                                daysSince(*c.input.digest.lastMoult(), c.day.today));
        case Phase::premoult:
            return Message{"reason.feed.memberPremoult", {{"since", *c.input.digest.premoultSign}}};
        case Phase::likelyPremoult:
        case Phase::between: break;
    }
    return std::nullopt;
}

/// Signs of a moult that did not come.
std::optional<Message> falsePremoultReason(const PlanContext& c) {
    const auto& digest = c.input.digest;
    if (c.input.isSeveral() || !digest.premoultSign) return std::nullopt;
    if (digest.lastAccepted && digest.lastAccepted->day >= *digest.premoultSign)
        return std::nullopt;
    return Message{"reason.feed.noMoultYet", {{"since", *digest.premoultSign}}};
}

Message dueReason(const PlanContext& c, const Next& next) {
    if (auto reason = memberReason(c)) return *reason;
    if (auto reason = falsePremoultReason(c)) return *reason;
    const auto& digest = c.input.digest;
    const int days = daysSince(next.since, c.day.today);
    switch (next.basis) {
        case Basis::never: return {"reason.feed.never", {{"since", next.since}}};
        case Basis::ate: {
            auto reason = sinceMessage("reason.feed.ate", days);
            reason.arguments.push_back({"meal", std::string(name(digest.lastAccepted->outcome))});
            reason.arguments.push_back({"gap", std::int64_t{usual(mealGap(c.stage, c.rules))}});
            return reason;
        }
        case Basis::moulted:
            return {digest.fangsBlack ? "reason.feed.fangsBlack" : "reason.feed.hardened",
                    {{"days", std::int64_t{days}}}};
        case Basis::refused: {
            const int times = digest.refusalsInARow;
            auto reason = sinceMessage(refusedId(times), days);
            reason.arguments.push_back({"times", std::int64_t{times}});
            return reason;
        }
        case Basis::uneaten: break;
    }
    return sinceMessage("reason.feed.uneaten", days);
}

Message waitReason(const PlanContext& c, const Next& next) {
    const bool isRefusal = next.basis == Basis::refused;
    std::string id = isRefusal ? "reason.feed.waitRefused" : "reason.feed.waitUneaten";
    if (next.basis == Basis::ate) id = "reason.feed.wait";
    auto reason = sinceMessage(std::move(id), daysSince(next.since, c.day.today));
    if (next.basis == Basis::ate) {
        const auto outcome = c.input.digest.lastAccepted->outcome;
        reason.arguments.push_back({"meal", std::string(name(outcome))});
    }
    reason.arguments.push_back({"opens", next.window.opens});
    return reason;
}

bool isPreyLeftIn(const Digest& digest) {
    return digest.leftoversSince && digest.lastOffer &&
           digest.lastOffer->outcome == Outcome::leftIn;
}

}  // namespace

Answer answerFeed(const PlanContext& c) {
    const auto today = c.day.today;
    const auto phase = c.closures.phaseOn(today);
    Answer answer;
    answer.care = Care::feed;
    if (phase != Phase::between && !c.input.isSeveral()) {
        answer.state = State::hold;
        answer.window = windowFrom(c.closures.endOf(phase), mealGap(c.stage, c.rules));
        answer.reason = holdReason(c, phase);
        return answer;
    }
    const auto next = nextMeal(c);
    answer.window = next.window;
    answer.amount = suggestPrey(c.input, c.stage, c.closures, c.rules, today).amount();
    if (isPreyLeftIn(c.input.digest)) {
        answer.state = State::waiting;
        answer.reason =
            sinceMessage("reason.feed.leftIn", daysSince(c.input.digest.lastOffer->day, today));
    } else if (today < next.window.opens) {
        answer.state = State::waiting;
        answer.reason = waitReason(c, next);
    } else {
        answer.state = State::due;
        answer.reason = dueReason(c, next);
    }
    return answer;
}

}  // namespace burrow
