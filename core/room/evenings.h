// On which evenings to feed whom in the weeks ahead, on the keeper's own feeding days.
#pragma once

#include "husbandry/forecast.h"
#include "husbandry/prey.h"
#include "room/room.h"
#include "visits/plan.h"

namespace burrow {

namespace setting {
inline constexpr const char* eveningDays = "evenings.days";  ///< "tue fri": every day where empty
inline constexpr const char* eveningMost = "evenings.most";  ///< "25": no limit where empty
}  // namespace setting

/// The keeper's feeding days as the book holds them; what can't be read counts as not set.
[[nodiscard]] visits::FeedingDays feedingDaysOf(const RoomInfo& info);
/// The same as settings. All seven days, or none, are written as every day.
[[nodiscard]] FieldValues eveningFields(const visits::FeedingDays& days);
/// "tue fri", also with commas, or in full; nothing for a word that is no day.
[[nodiscard]] std::optional<std::array<bool, 7>> readWeekdays(std::string_view text);
/// The largest number of subjects in one evening that can be asked for.
inline constexpr int mostInEvening = 9999;

struct EveningMeal {
    ResidentPtr resident;
    PreySuggestion prey;
};

struct Evening {
    CivilDay day;
    std::vector<EveningMeal> meals;  ///< in the order of the walk
};

/// A meal that no feeding day can take.
struct MealApart {
    EveningMeal meal;
    CivilDay day;  ///< when to feed instead
    visits::AloneBecause because = visits::AloneBecause::noFeedingDay;
    Message why;
};

struct EveningPlan {
    std::vector<Evening> evenings;  ///< by day
    std::vector<MealApart> apart;   ///< by day
    int nextVisits = 0;             ///< evenings for everyone's next meal
    Message why;                    ///< of those: why not fewer
    /// Subjects no two of whom can share an evening for their next meal.
    std::vector<ResidentPtr> witnesses;
};

/// From today, for so many days. Everyone's next meal falls on the fewest evenings there can be; the first of
/// them is kept, those fed on it get the window that follows (they are taken to eat), and so on. What is held
/// back takes part from the day on which it opens. An estimate: refusals and moults will change it.
/// O(evenings) plans of visits::planVisits().
[[nodiscard]] Result<EveningPlan> planEvenings(const Room& room, const visits::FeedingDays& days,
                                               int ahead, const Forecast& forecasts);

/// Positions of residents in the order of a walk along the shelves (visits::walk).
[[nodiscard]] std::vector<std::size_t> walkOf(std::span<const ResidentPtr> residents);

}  // namespace burrow
