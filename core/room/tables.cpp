#include "room/tables.h"

namespace burrow {

Result<RoomTables> RoomTables::fromJson(std::string_view prey, std::string_view homes,
                                        std::string_view air, std::string_view away,
                                        std::string_view sexing) {
    BURROW_TRY(auto feeders, stock::Feeders::fromJson(prey));
    BURROW_TRY(auto homeRules, homes::HomeRules::fromJson(homes));
    BURROW_TRY(auto airRules, air::AirRules::fromJson(air));
    BURROW_TRY(auto awayRules, AwayRules::fromJson(away));
    BURROW_TRY(auto sexingRules, burrow::sexing::SexingRules::fromJson(sexing));
    return RoomTables{std::move(feeders), std::move(homeRules), std::move(airRules),
                      std::move(awayRules), std::move(sexingRules)};
}

}  // namespace burrow
