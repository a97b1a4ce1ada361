// When to remind, and what of: the shipped numbers, and what the keeper of a device chose.
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "base/result.h"
#include "base/zone.h"
#include "husbandry/care.h"

namespace burrow {

/// Kept on the device. Times are minutes of the civil day by the wall clock, 0 to 1439.
struct ReminderChoice {
    bool isOn = true;
    int roundMinute = 0;
    int quietFrom = 0;  ///< nothing is said from here
    int quietUntil =
        0;  ///< up to, but not including this; the same as `quietFrom` for no quiet hours

    friend bool operator==(const ReminderChoice&, const ReminderChoice&) = default;
};

/// What is worth a reminder of its own: what is due of one kind, from a priority on.
struct ApartRule {
    std::string id;
    Care care = Care::leftovers;
    std::optional<Because> because;  ///< nothing for any reason
    Priority least = Priority::urgent;

    [[nodiscard]] bool fits(const Verdict& verdict) const;
};

struct ReminderRules {
    ReminderChoice usual;
    int mostADay = 1;
    int rememberedDays = 1;                ///< for how long it is known what was told
    Priority roundFrom = Priority::usual;  ///< a day with less than that needs no round
    std::vector<ApartRule> apart;

    /// From assets/rules/tables/reminders.json. Fails with `badInput` for a damaged file.
    static Result<ReminderRules> fromJson(std::string_view file);
};

[[nodiscard]] bool isQuiet(const ReminderChoice& choice, const Zone& zone, Instant at);
/// `at` itself where it is not quiet, else the first moment after the quiet hours; nothing where the
/// quiet hours of two days leave none.
[[nodiscard]] std::optional<Instant> afterQuiet(const ReminderChoice& choice, const Zone& zone,
                                                Instant at);
/// When the round of a day is to be said. An hour that the keeper put into the evening's quiet hours
/// comes the minute before them, one in those of the morning or of noon right after them.
[[nodiscard]] std::optional<Instant> roundOn(CivilDay day, const ReminderChoice& choice,
                                             const Zone& zone);

}  // namespace burrow
