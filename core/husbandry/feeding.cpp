// When the next meal is wanted, what holds it back, and why.
#include <algorithm>

#include "husbandry/answers.h"
#include "husbandry/prey.h"

namespace burrow {
namespace {

/// The meal, refusal or moult that the next meal follows from.
struct Next {
    Because because = Because::never;
    CivilDay since;
    Window window;
};

Because basisOf(const PlanInput& input) {
    const auto& digest = input.digest;
    const auto moult = input.isSeveral() ? std::nullopt : digest.lastMoult();
    const auto isSinceMoult = [&](const Meal& meal) { return !moult || meal.day >= *moult; };
    if (digest.refusalsInARow > 0) return Because::refused;
    if (digest.lastOffer && digest.lastOffer->outcome == Outcome::leftIn &&
        isSinceMoult(*digest.lastOffer)) {
        return Because::uneaten;
    }
    if (digest.lastAccepted && isSinceMoult(*digest.lastAccepted)) return Because::ate;
    return moult ? Because::moulted : Because::never;
}

double factorFor(const PlanContext& c) {
    return gapFactors(c.input, c.stage, c.moult, c.chance, c.weather, c.rules, c.day.today)
        .product();
}

/// After each meal its own gap must pass: a mouthful today does not make up for what a large meal
/// yesterday will last.
Window afterMeals(const PlanContext& c, double factor) {
    const auto gap = mealGap(c.stage, c.rules);
    const MealScale scale(c.input, c.stage, c.rules);
    const auto after = [&](const Meal& meal) {
        return windowAfter(meal.day, scaled(gap, factor * scale.of(meal)));
    };
    auto window = after(*c.input.digest.lastAccepted);
    for (const auto& meal : c.input.digest.recentOffers) {
        const bool isMeal = meal.outcome == Outcome::ate || meal.outcome == Outcome::part;
        if (isMeal) window = laterOf(window, after(meal));
    }
    return window;
}

Window retryAfter(const PlanContext& c) {
    const auto retry = c.rules.dayRange(ruleFor("feed.retry", c.stage.growing()));
    const double factor = retryFactor(c.input.digest.refusalsInARow - 1, c.rules);
    return windowAfter(c.input.digest.lastOffer->day, scaled(retry, factor));
}

/// Until when it was closed to food, by what concerns it as a whole.
std::optional<CivilDay> closedUntil(const PlanContext& c) {
    const auto today = c.day.today;
    if (!c.input.isSeveral()) return c.closures.last(today);
    return c.closures.hasCome(today) ? c.closures.settling : std::nullopt;
}

Next nextMeal(const PlanContext& c) {
    const auto& digest = c.input.digest;
    const double factor = factorFor(c);
    const auto gap = scaled(mealGap(c.stage, c.rules), factor);
    Next next{basisOf(c.input), knownSince(c.input, c.day.today), {}};
    switch (next.because) {
        case Because::ate:
            next.since = digest.lastAccepted->day;
            next.window = afterMeals(c, factor);
            break;
        case Because::moulted:
            next.since = *digest.lastMoult();
            next.window = windowFrom(c.closures.hardening.value_or(next.since), gap);
            break;
        case Because::refused:
        case Because::uneaten:
            next.since = digest.lastOffer->day;
            next.window = retryAfter(c);
            // Refusing between two meals is no reason to be offered the next one sooner.
            if (digest.lastAccepted) next.window = laterOf(next.window, afterMeals(c, factor));
            break;
        default: next.window = windowFrom(next.since, gap); break;
    }
    if (const auto until = closedUntil(c)) {
        next.window = laterOf(next.window, windowFrom(*until, gap));
    }
    return next;
}

bool isPreyLeftIn(const Digest& digest) {
    return digest.leftoversSince && digest.lastOffer &&
           digest.lastOffer->outcome == Outcome::leftIn;
}

Verdict held(const PlanContext& c, const Next& next) {
    const auto gap = scaled(mealGap(c.stage, c.rules), factorFor(c));
    Verdict verdict;
    verdict.care = Care::feed;
    verdict.state = State::hold;
    verdict.times = c.input.digest.refusalsInARow;
    if (c.closing) {
        verdict.because = c.closing->because;
        verdict.since = c.closing->since;
        verdict.window = windowFrom(c.closing->opens, gap);
    } else {
        verdict.because = Because::tooCold;
        verdict.since = c.input.warmth->day;
        verdict.window = windowFrom(c.day.today + 1, gap);
    }
    // What only asks for patience does not make hungry what was fed the day before.
    const bool isPatience =
        verdict.because == Because::settling || verdict.because == Because::tooCold;
    if (isPatience) verdict.window = laterOf(*verdict.window, next.window);
    return verdict;
}

/// What counts more than the last meal on the day it is fed: a soft member, or a moult that did not
/// come.
void lookFurther(const PlanContext& c, Verdict& verdict) {
    const auto& digest = c.input.digest;
    if (c.input.isSeveral()) {
        const auto phase = c.closures.phaseOn(c.day.today);
        if (phase == Phase::hardening) {
            verdict.because = Because::memberSoft;
            verdict.since = digest.lastMoult();
        } else if (phase == Phase::premoult) {
            verdict.because = Because::memberPremoult;
            verdict.since = digest.premoultSign;
        }
        return;
    }
    const auto& sign = digest.premoultSign;
    const bool hasEatenSince = sign && digest.lastAccepted && digest.lastAccepted->day >= *sign;
    if (sign && !hasEatenSince) {
        verdict.because = Because::falsePremoult;
        verdict.since = sign;
    }
}

Verdict judgeFeed(const PlanContext& c) {
    const auto next = nextMeal(c);
    if (c.closing || c.weather == Weather::tooCold) return held(c, next);
    auto verdict = inWindow(Care::feed, next.because, next.window, c.day.today);
    verdict.since = next.since;
    verdict.times = c.input.digest.refusalsInARow;
    if (isPreyLeftIn(c.input.digest)) {
        verdict.state = State::waiting;
        verdict.because = Because::preyLeftIn;
        verdict.since = c.input.digest.lastOffer->day;
    } else if (verdict.state == State::due) {
        lookFurther(c, verdict);
    }
    return verdict;
}

// --- why -----------------------------------------------------------------------------------------

Message hardeningReason(const PlanContext& c, const Verdict& verdict) {
    const int days = daysSince(*verdict.since, c.day.today);
    const auto soonest = c.rules.dayRange(ruleFor("hardening", c.stage.growing())).least;
    return sinceMessage(days >= soonest ? "reason.feed.checkFangs" : "reason.feed.hardening", days);
}

Message holdReason(const PlanContext& c, const Verdict& verdict) {
    const auto opens = verdict.window->opens;
    Message reason;
    switch (verdict.because) {
        case Because::hardening: reason = hardeningReason(c, verdict); break;
        case Because::premoult: reason = Message("reason.feed.premoult"); break;
        case Because::likelyPremoult: reason = Message("reason.feed.likelyPremoult"); break;
        case Because::eggSac: reason = Message("reason.feed.eggSac"); break;
        case Because::settling: reason = Message("reason.feed.settling"); break;
        default: reason = {"reason.feed.tooCold", {{"warmth", c.input.warmth->mean.value}}}; break;
    }
    reason.arguments.push_back({"since", *verdict.since});
    reason.arguments.push_back({"times", std::int64_t{verdict.times}});
    reason.arguments.push_back({"opens", opens});
    return reason;
}

std::string refusedId(int times) {
    if (times == 1) return "reason.feed.refusedOnce";
    return times == 2 ? "reason.feed.refusedTwice" : "reason.feed.refusedOften";
}

Message ateReason(const PlanContext& c, std::string id, int days) {
    const auto& meal = *c.input.digest.lastAccepted;
    const double factor = factorFor(c) * MealScale(c.input, c.stage, c.rules).of(meal);
    auto reason = sinceMessage(std::move(id), days);
    reason.arguments.push_back({"meal", std::string(name(meal.outcome))});
    reason.arguments.push_back(
        {"gap", std::int64_t{usual(scaled(mealGap(c.stage, c.rules), factor))}});
    return reason;
}

Message dueReason(const PlanContext& c, const Verdict& verdict) {
    const auto since = *verdict.since;
    const int days = daysSince(since, c.day.today);
    switch (verdict.because) {
        case Because::memberSoft: return sinceMessage("reason.feed.memberMoulted", days);
        case Because::memberPremoult: return {"reason.feed.memberPremoult", {{"since", since}}};
        case Because::falsePremoult: return {"reason.feed.noMoultYet", {{"since", since}}};
        case Because::ate: return ateReason(c, "reason.feed.ate", days);
        case Because::moulted:
            return {c.input.digest.fangsBlack ? "reason.feed.fangsBlack" : "reason.feed.hardened",
                    {{"days", std::int64_t{days}}}};
        case Because::refused: {
            auto reason = sinceMessage(refusedId(verdict.times), days);
            reason.arguments.push_back({"times", std::int64_t{verdict.times}});
            return reason;
        }
        case Because::uneaten: return sinceMessage("reason.feed.uneaten", days);
        default: return {"reason.feed.never", {{"since", since}}};
    }
}

Message waitReason(const PlanContext& c, const Verdict& verdict) {
    const int days = daysSince(*verdict.since, c.day.today);
    Message reason;
    switch (verdict.because) {
        case Because::preyLeftIn: return sinceMessage("reason.feed.leftIn", days);
        case Because::ate: reason = ateReason(c, "reason.feed.wait", days); break;
        case Because::refused: reason = sinceMessage("reason.feed.waitRefused", days); break;
        case Because::uneaten: reason = sinceMessage("reason.feed.waitUneaten", days); break;
        default: reason = {"reason.feed.waitNever", {{"since", *verdict.since}}}; break;
    }
    reason.arguments.push_back({"opens", verdict.window->opens});
    return reason;
}

void sayFeed(const PlanContext& c, Answer& answer) {
    if (answer.state == State::hold) {
        answer.reason = holdReason(c, answer);
        return;
    }
    answer.amount = suggestPrey(c.input, c.stage, c.closures, c.rules, c.day.today).amount();
    answer.reason = answer.state == State::due ? dueReason(c, answer) : waitReason(c, answer);
}

}  // namespace

const CarePart feedPart{judgeFeed, sayFeed};

}  // namespace burrow
