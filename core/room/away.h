// The keeper is away: what to do before, what a sitter does and on which days, what waits, and which homes
// stay shut. A plan for people who don't know the animals: it leaves out whatever can wait, and it never
// asks a sitter to open a home with something fast, defensive or dangerous in it, or in a delicate phase.
#pragma once

#include <array>

#include "husbandry/forecast.h"
#include "husbandry/prey.h"
#include "room/room.h"

namespace burrow {

namespace setting {
/// Whom the sitter calls besides the room's contact, as one line.
inline constexpr const char* sitterCall = "sitter.call";
}  // namespace setting

/// How many days past its last good day a care may wait while nobody is there who knows the animals.
struct MayWait {
    int meal = 0;
    int water = 0;
    int damp = 0;
};

/// The table of assets/rules/tables/away.json.
class AwayRules {
public:
    /// Fails with `badInput` for a file that is no such table, or lacks a stage.
    static Result<AwayRules> fromJson(std::string_view file);
    [[nodiscard]] const MayWait& patience(Stage stage) const {
        return patience_[static_cast<std::size_t>(stage)];
    }

private:
    std::array<MayWait, 4> patience_;
};

/// First and last day away; both belong to it.
struct AwayDays {
    CivilDay from;
    CivilDay to;

    [[nodiscard]] CivilDay back() const { return to + 1; }
};
inline constexpr int longestAway = 60;

/// `moult`: no sign yet, but its next moult is as likely as not to come meanwhile: an estimate.
enum class ShutBecause {
    unknown,
    strongVenom,
    venom,
    sting,
    defensive,
    fast,
    eggSac,
    hardening,
    premoult,
    likelyPremoult,
    settling,
    moult
};
/// In files: "egg_sac".
[[nodiscard]] std::string_view name(ShutBecause because);

/// Fails as planAway() does.
[[nodiscard]] Done checkAway(AwayDays days, CivilDay today);

struct ShutReason {
    ShutBecause because = ShutBecause::unknown;
    Message says;
};

/// A home that nobody but the keeper opens.
struct Shut {
    ResidentPtr resident;
    std::vector<ShutReason> reasons;  ///< the gravest first; never empty

    [[nodiscard]] bool isEstimate() const;  ///< all of its reasons are
};

struct AwayTask {
    ResidentPtr resident;
    Care care = Care::water;
    std::optional<PreySuggestion> prey;  ///< of a feeding
};

struct AwayVisit {
    CivilDay day;
    std::vector<AwayTask> tasks;  ///< in the order of the walk, at each home in the order of `Care`
};

/// A care that is late when the keeper is back.
struct AwayWait {
    ResidentPtr resident;
    Care care = Care::feed;
    int lateBy = 0;       ///< days
    bool isLong = false;  ///< longer than is good: somebody who can handle it should see to it
};

struct AwayPlan {
    AwayDays days;
    CivilDay lastMeal;              ///< the last day to feed so that leftovers can come out in time
    std::vector<AwayVisit> before;  ///< by the keeper
    std::vector<AwayVisit> visits;  ///< by the sitter
    std::vector<AwayWait> waits;    ///< in walking order
    std::vector<Shut> shut;         ///< in walking order
    Message summary;

    [[nodiscard]] const Shut* shutFor(SubjectId id) const;
};

/// Until the keeper leaves, care is taken to go on as planned; everyone eats what is offered. What would be
/// late while the keeper is away is done before: meals early enough that leftovers come out, water and damp on
/// the last day. What would wait longer than it may is the sitter's, on the fewest days there can be, a day
/// after each meal to take out what is left; the rest waits. Whether a moult comes is an estimate.
///
/// Fails with `badInput` for days that are past, in the wrong order, or more than `longestAway` from the
/// first to the last, or that far from today.
[[nodiscard]] Result<AwayPlan> planAway(const Room& room, AwayDays days, const AwayRules& rules,
                                        const Forecast& forecasts);

/// Why its home stays shut to a sitter; empty where it does not. `moult` is its forecast on today.
[[nodiscard]] std::vector<ShutReason> shutReasons(const Resident& resident, const Verdict& feeding,
                                                  const std::optional<MoultForecast>& moult,
                                                  AwayDays days);

}  // namespace burrow
