#include "husbandry/planner.h"

#include <algorithm>

#include "husbandry/answers.h"
#include "husbandry/plain_forecast.h"

namespace burrow {
namespace {

Because becauseOf(Standing standing) {
    switch (standing) {
        case Standing::onLoan: return Because::onLoan;
        case Standing::dead: return Because::dead;
        case Standing::sold: return Because::sold;
        case Standing::given: return Because::given;
        case Standing::here: break;
    }
    return Because::noneLeft;
}

/// Nothing is planned for what is not here; nothing where it is. What is away on loan is waited for
/// until the day it is to be back.
std::optional<Verdict> whyNotPlanned(const PlanInput& input, CivilDay today) {
    const auto& subject = input.subject;
    const auto& digest = input.digest;
    if (subject.standing == Standing::here) {
        if (subject.headcount > 0 || !input.isSeveral()) return std::nullopt;
        return nothingToDo(Care::feed, Because::noneLeft);
    }
    auto verdict = nothingToDo(Care::feed, becauseOf(subject.standing));
    verdict.since = digest.standingSince;
    if (subject.standing == Standing::onLoan && digest.loanUntil) {
        if (today >= *digest.loanUntil) {
            verdict.because = Because::loanOver;
        } else {
            verdict.state = State::waiting;
            verdict.window = Window{*digest.loanUntil, *digest.loanUntil, *digest.loanUntil};
        }
    }
    return verdict;
}

Message awayMessage(const PlanInput& input, const Verdict& verdict) {
    if (verdict.because == Because::noneLeft) return Message("reason.noneLeft");
    Message reason("reason.away." + std::string(name(input.subject.standing)));
    if (verdict.because == Because::loanOver) reason.id += ".over";
    if (verdict.state == State::waiting) reason.id += ".until";
    if (const auto back = input.digest.loanUntil) reason.arguments.push_back({"until", *back});
    if (const auto since = verdict.since) {
        reason.id += ".since";
        reason.arguments.push_back({"since", *since});
    }
    return reason;
}

std::string verbId(const Verdict& verdict) {
    switch (verdict.because) {
        case Because::fangs: return "verb.fangs";
        case Because::spermWeb: return "verb.pair";
        case Because::pairedOnce: return "verb.pairAgain";
        case Because::sacExpected: return "verb.lookForSac";
        default: return "verb." + std::string(name(verdict.care));
    }
}

}  // namespace

bool isListed(const Verdict& verdict) {
    return verdict.state == State::due ||
           (verdict.state == State::hold && verdict.care == Care::feed);
}

bool isOfRound(Care care) {
    switch (care) {
        case Care::leftovers:
        case Care::look:
        case Care::feed:
        case Care::water:
        case Care::damp:
        case Care::moultCheck:
        case Care::headcount: return true;
        case Care::measure:
        case Care::breeding:
        case Care::rehouse:
        case Care::quarantine: break;
    }
    return false;
}

const Answer& mainAnswer(const Plan& plan) {
    const auto found = std::find_if(plan.answers.begin(), plan.answers.end(), isListed);
    return found != plan.answers.end() ? *found : plan.of(Care::feed);
}

Message Answer::verb(Form form) const {
    switch (state) {
        case State::hold: return {"verb.hold"};
        case State::waiting: return {"verb.wait"};
        case State::none: return {"verb.nothing"};
        case State::due: break;
    }
    if (care == Care::feed && form == Form::group) return {"verb.feedGroup"};
    return Message(verbId(*this));
}

Plan planFor(const PlanInput& input, const Rules& rules, const PlanDay& day) {
    const PlainForecast plain;
    return planFor(input, rules, day, plain);
}

Plan planFor(const PlanInput& input, const Rules& rules, const PlanDay& day,
             const Forecast& forecasts) {
    Plan plan;
    const auto own = rules.of(input.ruleSubject());
    const auto away = whyNotPlanned(input, day.today);
    if (away) {
        plan.stage = judgeStage(input, own, day.today);
        for (const auto care : allCare) {
            auto& answer = plan.answers[static_cast<std::size_t>(care)];
            static_cast<Verdict&>(answer) = *away;
            answer.care = care;
            answer.reason = awayMessage(input, *away);
        }
        return plan;
    }
    auto context = contextOf(input, own, day, forecasts);
    plan.phase = context.closures.phaseOn(day.today);
    for (const auto care : allCare) {
        auto& answer = plan.answers[static_cast<std::size_t>(care)];
        static_cast<Verdict&>(answer) = judged(care, context);
        partFor(care).say(context, answer);
    }
    plan.stage = std::move(context.stage);
    return plan;
}

Outlook outlookFor(const PlanInput& input, const Rules& rules, const PlanDay& day,
                   const Forecast& forecasts) {
    Outlook outlook;
    const auto own = rules.of(input.ruleSubject());
    if (const auto away = whyNotPlanned(input, day.today)) {
        outlook.stage = judgeStage(input, own, day.today).stage;
        outlook.verdicts.fill(*away);
        for (const auto care : allCare) {
            outlook.verdicts[static_cast<std::size_t>(care)].care = care;
        }
        return outlook;
    }
    const auto context = contextOf(input, own, day, forecasts);
    outlook.stage = context.stage.stage;
    outlook.phase = context.closures.phaseOn(day.today);
    for (const auto care : allCare) {
        outlook.verdicts[static_cast<std::size_t>(care)] = judged(care, context);
    }
    return outlook;
}

}  // namespace burrow
