#include "husbandry/planner.h"

#include <algorithm>

#include "husbandry/answers.h"

namespace burrow {
namespace {

/// Nothing is planned for what is not here; nothing where it is.
std::optional<Message> whyNotPlanned(const PlanInput& input) {
    const auto& subject = input.subject;
    if (subject.standing == Standing::here) {
        if (subject.headcount > 0 || !input.isSeveral()) return std::nullopt;
        return Message("reason.noneLeft");
    }
    Message reason("reason.away." + std::string(name(subject.standing)));
    if (const auto since = input.digest.standingSince) {
        reason.id += ".since";
        reason.arguments.push_back({"since", *since});
    }
    return reason;
}

}  // namespace

std::string_view name(Care care) {
    switch (care) {
        case Care::leftovers: return "leftovers";
        case Care::look: return "look";
        case Care::feed: return "feed";
        case Care::water: return "water";
        case Care::damp: return "damp";
    }
    return {};
}

bool isListed(const Answer& answer) {
    return answer.state == State::due || (answer.state == State::hold && answer.care == Care::feed);
}

const Answer& mainAnswer(const Plan& plan) {
    const auto found = std::find_if(plan.answers.begin(), plan.answers.end(), isListed);
    return found != plan.answers.end() ? *found : plan.of(Care::feed);
}

std::string_view name(State state) {
    switch (state) {
        case State::due: return "due";
        case State::hold: return "hold";
        case State::waiting: return "waiting";
        case State::none: return "none";
    }
    return {};
}

Message Answer::verb(Form form) const {
    switch (state) {
        case State::hold: return {"verb.hold"};
        case State::waiting: return {"verb.wait"};
        case State::none: return {"verb.nothing"};
        case State::due: break;
    }
    if (care == Care::feed && form == Form::group) return {"verb.feedGroup"};
    return {"verb." + std::string(name(care))};
}

Plan planFor(const PlanInput& input, const Rules& rules, const PlanDay& day) {
    Plan plan;
    plan.stage = judgeStage(input, rules, day.today);
    if (const auto away = whyNotPlanned(input)) {
        for (const auto care : allCare) {
            plan.answers[static_cast<std::size_t>(care)] =
                Answer{care, State::none, std::nullopt, std::nullopt, *away};
        }
        return plan;
    }
    const auto closures = closuresOf(input, plan.stage, rules);
    plan.phase = closures.phaseOn(day.today);
    const PlanContext context{input, plan.stage, closures, rules, day};
    plan.answers = {answerLeftovers(context), answerLook(context), answerFeed(context),
                    answerWater(context), answerDamp(context)};
    return plan;
}

}  // namespace burrow
