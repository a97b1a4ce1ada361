#include "room/away.h"

#include <algorithm>
#include <map>
#include <set>

#include "room/ahead.h"
#include "room/evenings.h"
#include "visits/plan.h"

namespace burrow {
namespace {

/// What a sitter may be asked for, in the order in which it is done at one home.
constexpr std::array sitterCare{Care::leftovers, Care::feed, Care::water, Care::damp};

int patienceFor(Care care, const MayWait& patience) {
    switch (care) {
        case Care::feed: return patience.meal;
        case Care::water: return patience.water;
        case Care::damp: return patience.damp;
        default: return 0;
    }
}

/// One home: its record run ahead through the days before, and those of the absence.
class Home {
public:
    Home(ResidentPtr resident, const Room& room, const AwayRules& rules, AwayDays days,
         CivilDay lastMeal, const Forecast& forecasts)
        : run_(std::move(resident), room, forecasts),
          patience_(rules.patience(run_.resident().plan.stage.stage)),
          days_(days),
          today_(room.day().today),
          lastMeal_(lastMeal) {}

    [[nodiscard]] const ResidentPtr& resident() const { return run_.shared(); }
    [[nodiscard]] const std::vector<ShutReason>& shut() const { return shut_; }

    /// What the keeper does before, by day; then it is known whether the home stays shut.
    [[nodiscard]] std::vector<std::pair<CivilDay, AwayTask>> prepare() {
        std::vector<std::pair<CivilDay, AwayTask>> tasks;
        const auto lastDay = days_.from - 1;
        if (lastMeal_ >= today_) {
            goOn(lastMeal_);
            if (needsMealBefore()) tasks.emplace_back(lastMeal_, perform(Care::feed, lastMeal_));
        }
        if (lastDay >= today_) {
            // Nothing is fed any more, the rest goes on.
            const auto outlook = run_.on(lastDay);
            if (outlook.of(Care::leftovers).state != State::none) {
                tasks.emplace_back(lastDay, perform(Care::leftovers, lastDay));
            }
            for (const auto care : {Care::water, Care::damp}) {
                const auto& verdict = outlook.of(care);
                const bool isLate = verdict.window && verdict.window->late < days_.back();
                if (isLate) tasks.emplace_back(lastDay, perform(care, lastDay));
            }
        }
        const int within = std::max(1, days_.back() - today_);
        shut_ = shutReasons(run_.resident(), run_.on(days_.from).of(Care::feed),
                            run_.nextMoult(today_, within), days_);
        return tasks;
    }

    /// The window of a care that the sitter has to see to from `day` on.
    [[nodiscard]] std::optional<visits::FeedingWindow> sitterWindow(Care care, CivilDay day) const {
        if (!shut_.empty()) return std::nullopt;
        if (care == Care::leftovers && leftoversOn_) {
            return visits::FeedingWindow{0, *leftoversOn_, *leftoversOn_, *leftoversOn_, 1};
        }
        const auto verdict = run_.on(day).of(care);
        if (!verdict.window || verdict.state == State::none || verdict.state == State::hold) {
            return std::nullopt;
        }
        auto window = *verdict.window;
        const int patience = patienceFor(care, patience_);
        if (window.late + patience >= days_.back()) return std::nullopt;
        window.opens = std::max(window.opens, day);
        const auto late = std::max(window.late + patience, window.opens);
        return visits::FeedingWindow{0, window.opens, std::clamp(window.late, window.opens, late),
                                     late, 0};
    }

    AwayTask perform(Care care, CivilDay day) {
        AwayTask task{run_.shared(), care, std::nullopt};
        if (care == Care::feed) task.prey = run_.preyOn(day);
        run_.perform(care, day);
        if (care == Care::leftovers) leftoversOn_.reset();
        return task;
    }
    /// What was offered on that day is looked for on the next.
    void lookForLeftovers(CivilDay fed) {
        if (fed + 1 < days_.back()) leftoversOn_ = fed + 1;
    }

    void addWaits(std::vector<AwayWait>& waits) const {
        const auto outlook = run_.on(days_.to);
        for (const auto care : {Care::feed, Care::water, Care::damp}) {
            const auto& verdict = outlook.of(care);
            if (!verdict.window || verdict.state == State::none || verdict.state == State::hold) {
                continue;
            }
            const int lateBy = days_.back() - verdict.window->late;
            if (lateBy <= 0) continue;
            waits.push_back({run_.shared(), care, lateBy, lateBy > patienceFor(care, patience_)});
        }
    }

private:
    [[nodiscard]] bool needsMealBefore() const {
        const auto verdict = run_.on(lastMeal_).of(Care::feed);
        return verdict.state == State::due && verdict.window->late < days_.back();
    }

    /// Care goes on as planned until that day: everything on its best day.
    void goOn(CivilDay until) {
        auto day = today_;
        const auto most = static_cast<std::size_t>(until - day) * sitterCare.size();
        for (std::size_t done = 0; day < until && done < most;) {
            const auto outlook = run_.on(day);
            std::optional<CivilDay> next;
            auto care = Care::feed;
            for (const auto each : sitterCare) {
                const auto& verdict = outlook.of(each);
                if (!verdict.window || verdict.state == State::none) continue;
                const auto soonest = verdict.state == State::due ? day : day + 1;
                const auto at = std::max(soonest, verdict.window->best);
                if (next && at >= *next) continue;
                next = at;
                care = each;
            }
            if (!next || *next >= until) return;
            if (*next > day) {
                day = *next;
                continue;
            }
            run_.perform(care, day);
            ++done;
        }
    }

    RunAhead run_;
    MayWait patience_;
    AwayDays days_;
    CivilDay today_;
    CivilDay lastMeal_;
    std::vector<ShutReason> shut_;
    std::optional<CivilDay> leftoversOn_;  ///< after a meal that the sitter offered
};

class Absence {
public:
    Absence(const Room& room, AwayDays days, const AwayRules& rules, const Forecast& forecasts) {
        plan_.days = days;
        const int hours = room.rules().hours("leftovers.within");
        plan_.lastMeal = days.from - 1 - (hours + 23) / 24;
        for (auto& resident : caredFor(room)) {
            homes_.emplace_back(std::move(resident), room, rules, days, plan_.lastMeal, forecasts);
        }
    }

    Result<AwayPlan> plan() {
        prepare();
        BURROW_DO(sendSitter());
        for (const auto& home : homes_) home.addWaits(plan_.waits);
        plan_.summary = {plan_.visits.empty() ? "away.summary.none" : "away.summary",
                         {{"visits", static_cast<std::int64_t>(plan_.visits.size())},
                          {"shut", static_cast<std::int64_t>(plan_.shut.size())},
                          {"from", plan_.days.from},
                          {"to", plan_.days.to}}};
        return std::move(plan_);
    }

private:
    void prepare() {
        std::map<CivilDay, std::vector<AwayTask>> byDay;
        for (auto& home : homes_) {
            for (auto& [day, task] : home.prepare()) byDay[day].push_back(std::move(task));
            if (!home.shut().empty()) plan_.shut.push_back({home.resident(), home.shut()});
        }
        for (auto& [day, tasks] : byDay) plan_.before.push_back({day, walked(std::move(tasks))});
    }

    /// The fewest days for all that is asked for from now on; the first of them is kept, and so on.
    Done sendSitter() {
        visits::FeedingDays any;
        any.weekdays.fill(true);
        for (auto day = plan_.days.from; day < plan_.days.back();) {
            std::vector<visits::FeedingWindow> windows;
            for (std::size_t i = 0; i < homes_.size() * sitterCare.size(); ++i) {
                auto window = homes_[i / sitterCare.size()].sitterWindow(careOf(i), day);
                if (!window) continue;
                window->who = i;
                windows.push_back(*window);
            }
            BURROW_TRY(const auto planned, visits::planVisits(windows, any, day));
            if (planned.visits.empty() || planned.visits.front().day >= plan_.days.back()) break;
            visit(planned.visits.front());
            day = planned.visits.front().day + 1;
        }
        return {};
    }

    [[nodiscard]] static Care careOf(std::size_t who) {
        return sitterCare[who % sitterCare.size()];
    }

    void visit(const visits::Visit& planned) {
        std::vector<AwayTask> tasks;
        auto who = planned.who;
        std::sort(who.begin(), who.end());
        std::set<std::size_t> fed;
        for (const auto each : who) {
            const auto home = each / sitterCare.size();
            tasks.push_back(homes_[home].perform(careOf(each), planned.day));
            if (careOf(each) == Care::feed) fed.insert(home);
        }
        for (const auto home : fed) homes_[home].lookForLeftovers(planned.day);
        plan_.visits.push_back({planned.day, walked(std::move(tasks))});
    }

    /// In the order of the walk; what belongs to one home stays in its order.
    [[nodiscard]] static std::vector<AwayTask> walked(std::vector<AwayTask> tasks) {
        std::vector<ResidentPtr> residents;
        for (const auto& task : tasks) {
            if (residents.empty() || residents.back() != task.resident) {
                residents.push_back(task.resident);
            }
        }
        std::map<SubjectId, std::vector<AwayTask>> byHome;
        for (auto& task : tasks) byHome[task.resident->subject().id].push_back(std::move(task));
        std::vector<AwayTask> sorted;
        for (const auto at : walkOf(residents)) {
            for (auto& task : byHome[residents[at]->subject().id]) {
                sorted.push_back(std::move(task));
            }
        }
        return sorted;
    }

    AwayPlan plan_;
    std::vector<Home> homes_;
};

}  // namespace

Done checkAway(AwayDays days, CivilDay today) {
    if (days.from < today) return fail(Trouble::badInput, {"away.past", {{"day", days.from}}});
    if (days.to < days.from) {
        return fail(Trouble::badInput, {"away.order", {{"from", days.from}, {"to", days.to}}});
    }
    if (days.to - days.from >= longestAway || days.from - today > longestAway) {
        return fail(Trouble::badInput, {"away.tooLong", {{"most", std::int64_t{longestAway}}}});
    }
    return {};
}

Result<AwayPlan> planAway(const Room& room, AwayDays days, const AwayRules& rules,
                          const Forecast& forecasts) {
    BURROW_DO(checkAway(days, room.day().today));
    return Absence(room, days, rules, forecasts).plan();
}

}  // namespace burrow
