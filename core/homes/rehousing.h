// In which order to move animals so that each finds its new home empty, and what to mind at each.
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <vector>

#include "homes/space.h"

namespace burrow::homes {

/// Why an animal is not moved now.
enum class Held { premoult, hardening, sac, settling };

/// What decides how it is moved.
struct Manner {
    Habit habit = Habit::terrestrial;
    Age age = Age::juvenile;
    Temperament temperament = Temperament::skittish;
    bool isFast = true;
    bool hasHairs = false;
    Venom venom = Venom::notable;
    bool isGroup = false;
};

/// Numbers for animals and homes are the caller's own.
struct Move {
    std::size_t who = 0;
    std::size_t from = 0;
    std::size_t to = 0;
    std::optional<Held> held;
    Manner manner;
};

enum class StepKind {
    move,       ///< into its new home
    intoSpare,  ///< into a spare tub, to free a home that others wait for
    outOfSpare  ///< from there into its new home
};

struct Step {
    StepKind kind = StepKind::move;
    std::size_t who = 0;
    std::size_t from = 0;  ///< the home it leaves, also out of a spare tub
    std::size_t to = 0;
    Message why;
    std::vector<Message> cautions;
};

/// Someone who stays for now.
struct Waiting {
    std::size_t who = 0;
    std::optional<std::size_t>
        waitsFor;  ///< who has to leave its new home first; itself held or waiting
    Message why;
};

struct Rehousing {
    std::vector<Step> steps;
    std::vector<Waiting> waiting;
    int spareTubs = 0;  ///< in use at the same time
    Message summary;
};

/// The order of the moves given, as close to theirs as can be: a move is made once everyone has left the
/// home it goes to. Where moves wait for each other in a circle, one of them goes through a spare tub. An
/// animal that is held stays, and so does everyone who waits for its home, or for one in `occupied`:
/// homes of animals that don't move. Fails with `badInput` for two moves of one animal, or into one home.
/// O(n log n).
[[nodiscard]] Result<Rehousing> rehousing(std::span<const Move> moves,
                                          std::span<const std::size_t> occupied,
                                          const HomeRules& rules);

/// What to mind when one is moved, the gravest first: rows of the table whose `when` holds.
[[nodiscard]] std::vector<Message> cautionsFor(const Manner& manner, const HomeRules& rules);

}  // namespace burrow::homes
