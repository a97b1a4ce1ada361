// The vocabulary of answers: kinds of care, how each stands, and because of what.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string_view>

#include "base/civil.h"

namespace burrow {

/// In the order in which they are done at one enclosure.
enum class Care : std::uint8_t {
    leftovers,
    look,
    feed,
    water,
    damp,
    moultCheck,
    headcount,
    measure,
    breeding,
    rehouse,
    quarantine
};
inline constexpr std::array allCare{Care::leftovers, Care::look,      Care::feed,
                                    Care::water,     Care::damp,      Care::moultCheck,
                                    Care::headcount, Care::measure,   Care::breeding,
                                    Care::rehouse,   Care::quarantine};

/// `hold`: it would do harm now. `waiting`: its day has not come, or leftovers come first. `none`:
/// there is nothing to do, and no day on which there will be, as far as the record shows.
enum class State : std::uint8_t { due, hold, waiting, none };

/// The fact behind an answer.
enum class Because : std::uint8_t {
    // nothing is planned
    noneLeft,
    onLoan,
    loanOver,
    dead,
    sold,
    given,
    // closed for now
    hardening,
    premoult,
    likelyPremoult,
    eggSac,
    settling,
    tooCold,
    heat,
    quarantined,
    // a round of days
    never,
    lastDone,
    silent,
    // feeding
    ate,
    refused,
    uneaten,
    moulted,
    preyLeftIn,
    falsePremoult,
    memberSoft,
    memberPremoult,
    // leftovers
    leftovers,
    nothingLeft,
    neverOffered,
    // the next moult
    fangs,
    moultExpected,
    noMoultKnown,
    lastMoultOver,
    // counting and measuring
    counted,
    countedFewer,
    single,
    several,
    unmeasured,
    grownSince,
    measured,
    // the home
    outgrown,
    outgrowsNext,
    fits,
    homeUnknown,
    sizeUnknown,
    // breeding
    spermWeb,
    pairedOnce,
    sacExpected,
    noSpermWeb,
    notPaired,
    // quarantine
    notQuarantined
};
inline constexpr std::size_t becauseCount = static_cast<std::size_t>(Because::notQuarantined) + 1;

/// How much a delay costs, of what is due; `none` for all that is not.
enum class Priority : std::uint8_t { none, low, usual, high, urgent };

/// In files and on the command line: "moult_check", "waiting", "likely_premoult", "usual".
[[nodiscard]] std::string_view name(Care care);
[[nodiscard]] std::string_view name(State state);
[[nodiscard]] std::string_view name(Because because);
[[nodiscard]] std::string_view name(Priority priority);
/// Accepts spaces, hyphens and underscores alike.
[[nodiscard]] std::optional<Care> parseCare(std::string_view text);

/// The first day, the best and the last before it is late.
struct Window {
    CivilDay opens;
    CivilDay best;
    CivilDay late;

    friend bool operator==(const Window&, const Window&) = default;
};

/// An answer without its words: small, so that a whole room's can be kept.
struct Verdict {
    Care care = Care::feed;
    State state = State::none;
    Because because = Because::noneLeft;
    Priority priority = Priority::none;
    std::optional<Window> window;   ///< nothing only for `none`
    std::optional<CivilDay> since;  ///< the day of the fact behind it
    int times = 0;                  ///< refusals, heads or days, where the fact has a number

    friend bool operator==(const Verdict&, const Verdict&) = default;
};

}  // namespace burrow
