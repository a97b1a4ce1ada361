#include "room/evenings.h"

#include <algorithm>
#include <charconv>
#include <utility>

#include "base/text.h"
#include "room/ahead.h"
#include "visits/walk.h"

namespace burrow {
namespace {

constexpr std::array<std::string_view, 7> dayNames{"sun", "mon", "tue", "wed", "thu", "fri", "sat"};
constexpr std::array<std::string_view, 7> longNames{"sunday",   "monday", "tuesday", "wednesday",
                                                    "thursday", "friday", "saturday"};

std::optional<std::size_t> dayNamed(std::string_view word) {
    const auto lower = lowerAscii(word);
    for (std::size_t day = 0; day < dayNames.size(); ++day) {
        if (lower == dayNames[day] || lower == longNames[day]) return day;
    }
    return std::nullopt;
}

/// Everyone's records, run ahead evening by evening.
class Weeks {
public:
    Weeks(const Room& room, const visits::FeedingDays& days, CivilDay end,
          const Forecast& forecasts)
        : days_(days), end_(end), cursor_(room.day().today) {
        for (auto& resident : caredFor(room)) {
            runs_.emplace_back(std::move(resident), room, forecasts);
            windows_.push_back(runs_.back().on(cursor_).of(Care::feed));
        }
    }

    Result<EveningPlan> plan() {
        EveningPlan plan;
        bool isFirst = true;
        while (cursor_ < end_ || isFirst) {
            BURROW_TRY(const auto visits, visits::planVisits(windows(), days_, cursor_));
            if (std::exchange(isFirst, false)) describe(plan, visits);
            const auto day = firstDay(visits);
            if (!day || *day >= end_) break;
            for (const auto& visit : visits.visits) {
                if (visit.day == *day) feed(plan, visit);
            }
            for (const auto& alone : visits.alone) {
                if (std::max(alone.day, cursor_) == *day) feedAlone(plan, alone, *day);
            }
            cursor_ = *day + 1;
        }
        return plan;
    }

private:
    [[nodiscard]] std::vector<visits::FeedingWindow> windows() const {
        std::vector<visits::FeedingWindow> all;
        for (std::size_t i = 0; i < windows_.size(); ++i) {
            const auto& verdict = windows_[i];
            if (verdict.state == State::none || !verdict.window) continue;
            const auto& window = *verdict.window;
            all.push_back(
                {i, window.opens, window.best, window.late, static_cast<int>(verdict.priority)});
        }
        return all;
    }

    void describe(EveningPlan& plan, const visits::VisitPlan& visits) const {
        plan.nextVisits = static_cast<int>(visits.visits.size());
        plan.why = visits.why;
        for (const auto who : visits.apart) plan.witnesses.push_back(runs_[who].shared());
    }

    [[nodiscard]] std::optional<CivilDay> firstDay(const visits::VisitPlan& visits) const {
        std::optional<CivilDay> first;
        if (!visits.visits.empty()) first = visits.visits.front().day;
        for (const auto& alone : visits.alone) {
            const auto day = std::max(alone.day, cursor_);
            if (!first || day < *first) first = day;
        }
        return first;
    }

    EveningMeal mealOf(std::size_t who, CivilDay day) {
        EveningMeal meal{runs_[who].shared(), runs_[who].preyOn(day)};
        runs_[who].perform(Care::feed, day);
        windows_[who] = runs_[who].on(day).of(Care::feed);
        return meal;
    }

    void feed(EveningPlan& plan, const visits::Visit& visit) {
        Evening evening{visit.day, {}};
        std::vector<ResidentPtr> residents;
        for (const auto who : visit.who) residents.push_back(runs_[who].shared());
        for (const auto at : walkOf(residents)) {
            evening.meals.push_back(mealOf(visit.who[at], visit.day));
        }
        plan.evenings.push_back(std::move(evening));
    }

    void feedAlone(EveningPlan& plan, const visits::Alone& alone, CivilDay day) {
        plan.apart.push_back({mealOf(alone.who, day), day, alone.because, alone.why});
    }

    const visits::FeedingDays& days_;
    CivilDay end_;
    CivilDay cursor_;
    std::vector<RunAhead> runs_;
    std::vector<Verdict> windows_;
};

}  // namespace

std::optional<std::array<bool, 7>> readWeekdays(std::string_view text) {
    std::array<bool, 7> days{};
    std::string words(text);
    std::replace(words.begin(), words.end(), ',', ' ');
    for (const auto word : split(words, ' ')) {
        if (trimmed(word).empty()) continue;
        const auto day = dayNamed(trimmed(word));
        if (!day) return std::nullopt;
        days[*day] = true;
    }
    return days;
}

visits::FeedingDays feedingDaysOf(const RoomInfo& info) {
    visits::FeedingDays days;
    const auto chosen = readWeekdays(info.other(setting::eveningDays));
    const bool isAny = chosen && std::find(chosen->begin(), chosen->end(), true) != chosen->end();
    if (isAny) {
        days.weekdays = *chosen;
    } else {
        days.weekdays.fill(true);
    }
    const auto most = info.other(setting::eveningMost);
    int number = 0;
    const auto read = std::from_chars(most.data(), most.data() + most.size(), number);
    const bool isNumber = read.ec == std::errc() && read.ptr == most.data() + most.size();
    if (isNumber && number >= 1 && number <= mostInEvening) days.most = number;
    return days;
}

FieldValues eveningFields(const visits::FeedingDays& days) {
    FieldValues fields;
    const auto count = std::count(days.weekdays.begin(), days.weekdays.end(), true);
    auto& chosen = fields[setting::eveningDays];
    if (count > 0 && count < 7) {
        std::string text;
        // From Monday, as most calendars of the trade do.
        for (std::size_t i = 1; i <= dayNames.size(); ++i) {
            const auto day = i % dayNames.size();
            if (!days.weekdays[day]) continue;
            if (!text.empty()) text += ' ';
            text += dayNames[day];
        }
        chosen = text;
    }
    auto& most = fields[setting::eveningMost];
    if (days.most) most = std::to_string(*days.most);
    return fields;
}

Result<EveningPlan> planEvenings(const Room& room, const visits::FeedingDays& days, int ahead,
                                 const Forecast& forecasts) {
    return Weeks(room, days, room.day().today + std::max(0, ahead), forecasts).plan();
}

std::vector<std::size_t> walkOf(std::span<const ResidentPtr> residents) {
    std::vector<visits::Stop> stops;
    stops.reserve(residents.size());
    for (const auto& resident : residents) {
        const auto& subject = resident->subject();
        stops.push_back({resident->kept.place, subject.number, subject.quarantined});
    }
    return visits::walk(stops);
}

}  // namespace burrow
