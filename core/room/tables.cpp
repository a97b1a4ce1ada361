#include "room/tables.h"

namespace burrow {

Result<RoomTables> RoomTables::fromJson(const TableTexts& texts) {
    // A missing one is as unreadable as an empty one.
    const auto text = [&](std::string_view name) -> std::string_view {
        const auto found = texts.find(name);
        return found == texts.end() ? std::string_view() : found->second;
    };
    BURROW_TRY(auto feeders, stock::Feeders::fromJson(text("prey")));
    BURROW_TRY(auto homeRules, homes::HomeRules::fromJson(text("homes")));
    BURROW_TRY(auto airRules, air::AirRules::fromJson(text("air")));
    BURROW_TRY(auto awayRules, AwayRules::fromJson(text("away")));
    BURROW_TRY(auto sexingRules, burrow::sexing::SexingRules::fromJson(text("sexing")));
    BURROW_TRY(auto measureRules, burrow::measure::MeasureRules::fromJson(text("measure")));
    return RoomTables{std::move(feeders), std::move(homeRules),   std::move(airRules),
                      awayRules,          std::move(sexingRules), std::move(measureRules)};
}

}  // namespace burrow
