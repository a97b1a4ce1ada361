// The trade's own numbers for the rooms that only compute: prey, homes, air (assets/rules/tables).
#pragma once

#include "air/sample.h"
#include "homes/space.h"
#include "stock/feeders.h"

namespace burrow {

struct RoomTables {
    stock::Feeders feeders;
    homes::HomeRules homes;
    air::AirRules air;

    /// The texts of prey.json, homes.json and air.json. Fails with `badInput`, and a message that names
    /// table and row, where one of them is damaged.
    static Result<RoomTables> fromJson(std::string_view prey, std::string_view homes,
                                       std::string_view air);
};

}  // namespace burrow
