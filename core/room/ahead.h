// One resident's record run ahead: what will be asked for once something was done on a day to come.
// Unlike comingTasks() the caller says which day that is.
#pragma once

#include "husbandry/forecast.h"
#include "husbandry/prey.h"
#include "room/room.h"

namespace burrow {

/// Holds on to the resident; the forecasts must outlive it. Moults that may come are not played.
class RunAhead {
public:
    RunAhead(ResidentPtr resident, const Room& room, const Forecast& forecasts);

    [[nodiscard]] const Resident& resident() const { return *resident_; }
    [[nodiscard]] const ResidentPtr& shared() const { return resident_; }
    /// How everything stands on that day.
    [[nodiscard]] Outlook on(CivilDay day) const;
    /// What would be offered on that day.
    [[nodiscard]] PreySuggestion preyOn(CivilDay day) const;
    [[nodiscard]] std::optional<MoultForecast> nextMoult(CivilDay today, int within) const;
    /// Does it, as the planner asks for it: a feeding is taken. Care that a round does not do is passed
    /// over.
    void perform(Care care, CivilDay day);
    [[nodiscard]] const Rules& rules() const { return rules_; }

private:
    [[nodiscard]] PlanInput input() const;
    void log(FactKind kind, CivilDay day, FactBody body = {});

    ResidentPtr resident_;
    Rules rules_;
    Zone zone_;
    const Forecast& forecasts_;
    Digest digest_;
};

/// Everyone who stands here and is to be cared for here, in walking order.
[[nodiscard]] std::vector<ResidentPtr> caredFor(const Room& room);

}  // namespace burrow
