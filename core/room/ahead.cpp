#include "room/ahead.h"

namespace burrow {
namespace {

/// Work is done in the evening.
constexpr int eveningSecond = 19 * 3600;

}  // namespace

RunAhead::RunAhead(ResidentPtr resident, const Room& room, const Forecast& forecasts)
    : resident_(std::move(resident)),
      rules_(room.rulesFor(*resident_)),
      zone_(room.day().zone),
      forecasts_(forecasts),
      digest_(resident_->kept.digest) {}

PlanInput RunAhead::input() const {
    const auto given = resident_->input();
    PlanInput input{given.subject, digest_, given.place, given.profile};
    input.home = given.home;
    input.quarantinedSince = given.quarantinedSince;
    input.warmth = given.warmth;
    return input;
}

Outlook RunAhead::on(CivilDay day) const {
    return outlookFor(input(), rules_, {day, zone_}, forecasts_);
}

PreySuggestion RunAhead::preyOn(CivilDay day) const {
    const auto input = this->input();
    const auto stage = judgeStage(input, rules_, day);
    return suggestPrey(input, stage, closuresOf(input, stage, rules_), rules_, day);
}

std::optional<MoultForecast> RunAhead::nextMoult(CivilDay today, int within) const {
    const auto input = this->input();
    const auto stage = judgeStage(input, rules_, today);
    return forecasts_.nextMoult({input, stage, rules_, today, within});
}

void RunAhead::perform(Care care, CivilDay day) {
    FactBody body;
    switch (care) {
        case Care::leftovers: return log(FactKind::leftoversOut, day);
        case Care::water: return log(FactKind::watered, day);
        case Care::damp: return log(FactKind::dampened, day);
        case Care::look:
        case Care::moultCheck:
        case Care::headcount:
            body.count = resident_->subject().headcount;
            return log(FactKind::seen, day, std::move(body));
        case Care::feed: {
            const auto prey = preyOn(day);
            body.prey = prey.kind;
            body.preyLength = prey.length;
            body.count = prey.count;
            body.outcome = Outcome::ate;
            return log(FactKind::offered, day, std::move(body));
        }
        case Care::measure:
        case Care::breeding:
        case Care::rehouse:
        case Care::quarantine: return;
    }
}

void RunAhead::log(FactKind kind, CivilDay day, FactBody body) {
    Fact fact;
    fact.kind = kind;
    fact.day = day;
    fact.happenedAt = zone_.at(day, eveningSecond);
    fact.body = std::move(body);
    fold(digest_, fact);
}

std::vector<ResidentPtr> caredFor(const Room& room) {
    std::vector<ResidentPtr> all;
    for (const auto& resident : room.residents()) {
        if (resident->subject().standing == Standing::here) all.push_back(resident);
    }
    return all;
}

}  // namespace burrow
