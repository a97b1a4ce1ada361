#include "husbandry/coming.h"

#include <algorithm>

namespace burrow {
namespace {

/// Work is done in the evening.
constexpr int eveningSecond = 19 * 3600;

class RunForward {
public:
    RunForward(const PlanInput& input, const Rules& rules, const PlanDay& day,
               const Forecast& forecasts)
        : subject_(input),
          rules_(rules.of(input.ruleSubject())),
          day_(day),
          forecasts_(forecasts),
          digest_(input.digest) {}

    std::vector<ComingTask> until(CivilDay end) {
        // Each kind once a day at most: whatever the rules, this comes to an end.
        const auto most = static_cast<std::size_t>(end - day_.today) * allCare.size();
        while (day_.today < end && tasks_.size() < most) {
            const auto outlook = outlookFor(input(), rules_, day_, forecasts_);
            const auto next = nextDay(outlook);
            if (!next || *next >= end) break;
            if (*next > day_.today) {
                day_.today = *next;
            } else {
                doFirst(outlook);
            }
        }
        return std::move(tasks_);
    }

private:
    [[nodiscard]] PlanInput input() const {
        PlanInput input{subject_.subject, digest_, subject_.place, subject_.profile};
        input.home = subject_.home;
        input.quarantinedSince = subject_.quarantinedSince;
        input.warmth = subject_.warmth;
        return input;
    }

    [[nodiscard]] bool isOver(Care care) const {
        return std::find(once_.begin(), once_.end(), care) != once_.end();
    }

    /// On its best day, or at once where that is past; what cannot be done today not before
    /// tomorrow.
    [[nodiscard]] std::optional<CivilDay> dayOf(const Verdict& verdict) const {
        if (!verdict.window || isOver(verdict.care)) return std::nullopt;
        const auto soonest = verdict.state == State::due ? day_.today : day_.today + 1;
        return std::max(soonest, verdict.window->best);
    }

    [[nodiscard]] std::optional<CivilDay> nextDay(const Outlook& outlook) const {
        std::optional<CivilDay> next;
        for (const auto& verdict : outlook.verdicts) {
            const auto day = dayOf(verdict);
            if (day && (!next || *day < *next)) next = day;
        }
        return next;
    }

    void doFirst(const Outlook& outlook) {
        const auto found =
            std::find_if(outlook.verdicts.begin(), outlook.verdicts.end(),
                         [&](const Verdict& verdict) { return dayOf(verdict) == day_.today; });
        if (found != outlook.verdicts.end()) perform(found->care);
    }

    void perform(Care care) {
        ComingTask task{day_.today, care, std::nullopt};
        FactBody body;
        switch (care) {
            case Care::leftovers: log(FactKind::leftoversOut); break;
            case Care::feed: task.prey = feed(); break;
            case Care::water: log(FactKind::watered); break;
            case Care::damp: log(FactKind::dampened); break;
            case Care::look:
            case Care::moultCheck:
            case Care::headcount:
                body.count = subject_.subject.headcount;
                log(FactKind::seen, body);
                break;
            case Care::measure:
            case Care::breeding:
            case Care::rehouse:
            case Care::quarantine: once_.push_back(care); break;
        }
        tasks_.push_back(std::move(task));
    }

    PreySuggestion feed() {
        const auto input = this->input();
        const auto stage = judgeStage(input, rules_, day_.today);
        auto prey = suggestPrey(input, stage, closuresOf(input, stage, rules_), rules_, day_.today);
        FactBody body;
        body.prey = prey.kind;
        body.preyLength = prey.length;
        body.count = prey.count;
        body.outcome = Outcome::ate;
        log(FactKind::offered, body);
        return prey;
    }

    void log(FactKind kind, FactBody body = {}) {
        Fact fact;
        fact.kind = kind;
        fact.day = day_.today;
        fact.happenedAt = day_.zone.at(day_.today, eveningSecond);
        fact.body = std::move(body);
        fold(digest_, fact);
    }

    const PlanInput& subject_;
    Rules rules_;
    PlanDay day_;
    const Forecast& forecasts_;
    Digest digest_;
    std::vector<Care> once_;
    std::vector<ComingTask> tasks_;
};

}  // namespace

std::vector<ComingTask> comingTasks(const PlanInput& input, const Rules& rules, const PlanDay& day,
                                    int days, const Forecast& forecasts) {
    return RunForward(input, rules, day, forecasts).until(day.today + std::max(0, days));
}

}  // namespace burrow
