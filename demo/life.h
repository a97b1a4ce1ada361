// Plays one life day by day, as a careful but human keeper would have written it down.
#pragma once

#include "cast.h"

namespace burrow::demo {

/// What happened, in order. Times are those of an evening round, each tub a little later.
std::vector<FactDraft> playLife(const Role& role, const Options& options,
                                const Room::Reference& reference, Dice& dice);

}  // namespace burrow::demo
