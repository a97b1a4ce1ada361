// The trade's own numbers: prey, homes, air, what may wait, and what tells the sex (assets/rules/tables).
#pragma once

#include "air/sample.h"
#include "homes/space.h"
#include "room/away.h"
#include "sexing/ratios.h"
#include "stock/feeders.h"

namespace burrow {

struct RoomTables {
    stock::Feeders feeders;
    homes::HomeRules homes;
    air::AirRules air;
    AwayRules away;
    sexing::SexingRules sexing;

    /// The texts of prey.json, homes.json, air.json, away.json and sexing.json. Fails with `badInput`, and a message that names
    /// table and row, where one of them is damaged.
    static Result<RoomTables> fromJson(std::string_view prey, std::string_view homes,
                                       std::string_view air, std::string_view away,
                                       std::string_view sexing);
};

}  // namespace burrow
