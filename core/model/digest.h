// The state of one subject, folded from its facts: what a planner needs to know without reading four
// years of history. Kept in the book beside the journal and updated with every entry.
#pragma once

#include <cstdint>
#include <optional>
#include <span>
#include <string>
#include <vector>

#include "model/fact.h"

namespace burrow {

/// What was offered, and what became of it.
struct Meal {
    CivilDay day;
    std::string prey;
    std::optional<Millimetres> preyLength;
    int count = 1;
    Outcome outcome = Outcome::ate;

    friend bool operator==(const Meal&, const Meal&) = default;
};

/// A moult and the size measured at it, where it was measured.
struct MoultMark {
    CivilDay day;
    std::optional<Millimetres> span;
    std::optional<Millimetres> carapace;

    friend bool operator==(const MoultMark&, const MoultMark&) = default;
};

struct Digest {
    std::optional<CivilDay> firstEntry;
    std::optional<CivilDay> lastEntry;

    std::optional<Meal> lastAccepted;  ///< the last meal eaten whole or in part
    std::optional<Meal> lastOffer;
    std::optional<Instant> leftoversSince;  ///< when prey was offered that may still be in there
    int refusalsInARow = 0;                 ///< since the last accepted meal or moult
    std::vector<Meal> recentOffers;         ///< oldest first, at most `recentKept`

    int moultCount = 0;
    std::vector<MoultMark> recentMoults;   ///< oldest first, at most `recentKept`
    std::optional<CivilDay> fangsBlack;    ///< seen since the last moult
    std::optional<CivilDay> premoultSign;  ///< the first seen since the last moult
    std::optional<CivilDay> lastPremoultSign;
    bool hadUltimateMoult = false;

    std::optional<Millimetres> span;  ///< the newest known, measured or at a moult
    std::optional<Millimetres> carapace;
    std::optional<CivilDay> sizedOn;  ///< when the newest of the two was taken

    std::optional<CivilDay> lastWatered;
    std::optional<CivilDay> lastDampened;
    std::optional<CivilDay> lastSeen;
    std::optional<int> lastSeenCount;
    std::optional<CivilDay> lastRehoused;
    std::optional<CivilDay> lastLooked;  ///< the last entry for which someone looked at the animal

    std::optional<CivilDay> spermWeb;    ///< the last one seen, until he was paired
    std::optional<CivilDay> lastPaired;  ///< until a moult, which costs her the sperm, or a sac
    int pairings = 0;                    ///< that led to it
    std::optional<CivilDay> sacLaid;     ///< the sac is with her

    int gone = 0;                      ///< died, sold or given away out of a group or lot
    std::optional<Standing> standing;  ///< what the facts say; nothing where they say nothing
    std::optional<CivilDay> standingSince;
    std::optional<CivilDay> loanUntil;  ///< of the loan it is away on
    std::optional<Sex> sexed;           ///< by the last examination that tells it

    /// How many recent moults and offers are kept: enough for the small moult line of a row.
    static constexpr std::size_t recentKept = 8;

    [[nodiscard]] std::optional<CivilDay> lastMoult() const {
        if (recentMoults.empty()) return std::nullopt;
        return recentMoults.back().day;
    }
    friend bool operator==(const Digest&, const Digest&) = default;
};

/// A moult with the sizes that were taken of its skin afterwards: of several the last. `facts` are its
/// subject's, in any order.
[[nodiscard]] MoultMark markOf(const Fact& moult, std::span<const Fact> facts);

/// Adds one fact that happened after all those already in the digest.
void fold(Digest& digest, const Fact& fact);

/// The digest of a whole history, which must be in happenedBefore order.
[[nodiscard]] Digest digestOf(std::span<const Fact> history);

}  // namespace burrow
