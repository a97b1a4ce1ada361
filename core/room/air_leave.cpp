#include "room/air_leave.h"

#include <fmt/format.h>

#include <array>

#include "exchange/csv.h"
#include "room/air_log.h"

namespace burrow {
namespace {

template <class Unit>
std::string cell(const std::optional<Unit>& value) {
    return value ? fmt::format("{:.2f}", value->value) : std::string();
}

/// A month at a time: years of readings need not be in memory together.
Done writePlace(Book& book, const AirPlace& place, const exchange::LeaveRow& write) {
    for (const auto& month : place.months) {
        const auto first = parseIsoDate(month + "-01");
        if (!first) continue;
        const auto from = Zone::utc().at(*first, 0);
        const auto date = yearMonthDay(*first);
        const auto next = date.month == 12 ? civilDay({date.year + 1, 1, 1})
                                           : civilDay({date.year, date.month + 1, 1});
        if (!next) continue;
        BURROW_TRY(const auto samples,
                   airOf(book, place, {from, Instant{Zone::utc().at(*next, 0).ms - 1}}));
        for (const auto& sample : samples) {
            const std::array<std::string, 4> cells{exchange::guardedText(place.place),
                                                   isoInstant(sample.at), cell(sample.temperature),
                                                   cell(sample.humidity)};
            BURROW_DO(write(cells));
        }
    }
    return {};
}

}  // namespace

exchange::LeaveTable airTable() {
    exchange::LeaveTable table;
    table.file = "air.csv";
    table.columns = {"place", "at", "celsius", "humidity"};
    table.hasAny = [](Book& book) -> Result<bool> {
        BURROW_TRY(const auto places, airPlaces(book));
        return !places.empty();
    };
    table.write = [](Book& book, const exchange::LeaveRow& write) -> Done {
        BURROW_TRY(const auto places, airPlaces(book));
        for (const auto& place : places) BURROW_DO(writePlace(book, place, write));
        return {};
    };
    return table;
}

}  // namespace burrow
