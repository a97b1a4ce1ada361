// What stands in the invented room besides its animals: their homes, homes that are empty, and what the
// thermometers said of late.
#pragma once

#include <span>

#include "cast.h"

namespace burrow::demo {

/// Sizes that a keeper would give an animal of that span, with room to grow. Position, name and place
/// stay as they are.
void fitHome(Enclosure& home, const Profile& profile, Millimetres span, Dice& dice);

/// The span on record at the end of a life.
[[nodiscard]] Millimetres spanAfter(const Role& role, std::span<const FactDraft> life);

/// Washed and waiting, of every habit.
[[nodiscard]] std::vector<Enclosure> emptyHomes(Book& book);

/// Two readings an hour for six weeks: a room, its warm shelf with a hot day, the damp nursery.
Result<std::vector<Draft>> airOfRoom(Book& book, const Options& options, Dice& dice);

}  // namespace burrow::demo
