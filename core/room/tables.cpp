#include "room/tables.h"

namespace burrow {

Result<RoomTables> RoomTables::fromJson(std::string_view prey, std::string_view homes,
                                        std::string_view air) {
    BURROW_TRY(auto feeders, stock::Feeders::fromJson(prey));
    BURROW_TRY(auto homeRules, homes::HomeRules::fromJson(homes));
    BURROW_TRY(auto airRules, air::AirRules::fromJson(air));
    return RoomTables{std::move(feeders), std::move(homeRules), std::move(airRules)};
}

}  // namespace burrow
