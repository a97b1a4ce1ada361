// Who has outgrown its home or soon will, which empty homes there are and for whom, and the moves one
// by one: what core/homes works out, asked for everyone of a room.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <vector>

#include "homes/ground.h"
#include "homes/matching.h"
#include "homes/outgrown.h"
#include "homes/rehousing.h"
#include "husbandry/forecast.h"
#include "room/room.h"

namespace burrow {

/// The position of an animal that waits in a spare tub, in the midst of a plan: it has no home, and gets
/// one before all others.
inline constexpr std::string_view spareTub = "spare tub";

/// How an animal and its home go together.
enum class HomeState {
    inSpareTub,
    tooSmall,  ///< no depth of ground would do
    ground,    ///< large enough, with its ground deeper or less deep
    soon,      ///< fits, and hardly after the next moult: an estimate
    fits,
    unknown  ///< a size is not recorded: its own, or one of the home
};
/// In files: "in_spare_tub", "too_small".
[[nodiscard]] std::string_view name(HomeState state);

/// One animal and its home.
struct Housed {
    ResidentPtr resident;
    std::optional<Enclosure> home;
    HomeState state = HomeState::unknown;
    std::optional<homes::Dweller> dweller;     ///< nothing where its size is not known
    homes::Fit fit;                            ///< empty without a home or a size
    std::optional<Range<Millimetres>> ground;  ///< for `ground`: how deep it may be made
    std::optional<homes::Dweller> grown;       ///< after the next moult, where there is a forecast
    bool fitsWhenGrown = true;                 ///< large enough after it
    std::optional<MoultForecast> moult;
    std::optional<homes::Outgrown> outgrown;  ///< when, by the same forecasts
    bool isDue = false;                       ///< one of the moves is for it, or should be
};

/// A home that nobody lives in.
struct FreeHome {
    Enclosure home;
    std::optional<std::size_t> forWhom;  ///< a move of the plan goes there: position in `housed`
};

/// One move, in its turn.
struct PlannedMove {
    homes::StepKind kind = homes::StepKind::move;
    std::size_t who = 0;            ///< position in `housed`
    std::optional<Enclosure> from;  ///< nothing for one in a spare tub
    Enclosure to;
    Range<Millimetres> depth;  ///< how deep the ground of the new home may be made
    std::optional<homes::Ground> ground;
    std::optional<homes::Fit> fit;  ///< once it is there, with ground as deep as `ground` says
    Message why;
    std::vector<Message> cautions;
};

/// Someone who has to move, and doesn't yet.
struct StayingOn {
    std::size_t who = 0;
    std::optional<std::size_t> waitsFor;
    Message why;
    std::optional<homes::Litres> least;  ///< volume of the smallest home that would do
};

struct HomesPlan {
    std::vector<Housed> housed;  ///< single animals on the books, in walking order
    int several = 0;             ///< groups and lots, whose homes nobody can judge by one span
    std::vector<FreeHome> free;  ///< by volume
    std::vector<PlannedMove> moves;
    std::vector<StayingOn> waiting;  ///< have a home to go to, later
    std::vector<StayingOn> without;  ///< no empty home fits
    int spareTubs = 0;
    Message summary;
};

/// `enclosures` are all of the book. Who is to be moved: those whose home is too small, those in a spare
/// tub, and those whose next moult makes it too small and may come within the days that the rule
/// "home.ahead" gives. New homes are for the size after the next moult, where there is a forecast. Homes
/// that such moves leave count as empty for the others. O(animals + enclosures), and what matchHomes()
/// takes for those who move.
[[nodiscard]] HomesPlan homesPlan(const Room& room, std::span<const Enclosure> enclosures,
                                  const homes::HomeRules& rules, const Forecast& forecasts);

/// One animal of it alone: what its page shows.
[[nodiscard]] Housed housedIn(const Room& room, const ResidentPtr& resident,
                              const std::optional<Enclosure>& home, const homes::HomeRules& rules,
                              const Forecast& forecasts);

/// What a move writes: "rehoused" into a home, "moved" to a spare tub at the place where it stands.
[[nodiscard]] FactDraft factOf(const HomesPlan& plan, const PlannedMove& move);

}  // namespace burrow
