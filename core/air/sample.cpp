#include "air/sample.h"

#include <array>
#include <cmath>
#include <utility>

#include "base/text.h"
#include "model/table.h"

namespace burrow::air {
namespace {

constexpr std::array<std::pair<std::string_view, ColumnRole>, 5> roles{
    {{"moment", ColumnRole::moment},
     {"date", ColumnRole::date},
     {"clock", ColumnRole::clock},
     {"temperature", ColumnRole::temperature},
     {"humidity", ColumnRole::humidity}}};

std::vector<TableShape> shapes() {
    return {{"columns", {{"names"}}},
            {"alarms", {{"back", {{0, 20}}}, {"least_minutes", {{0, 1440}}}}},
            {"humidity", {{"least", {{0, 100}}}, {"most", {{0, 100}}}}},
            {"gaps", {{"minutes", {{1, 1440}}}}},
            {"development", {{"celsius", {{0, 40}}}}}};
}

constexpr std::array<std::pair<std::string_view, Damp>, 4> damps{{{"dry", Damp::dry},
                                                                  {"moderate", Damp::moderate},
                                                                  {"moist", Damp::moist},
                                                                  {"swamp", Damp::swamp}}};

}  // namespace

Result<AirRules> AirRules::fromJson(std::string_view file) {
    const auto wanted = shapes();
    BURROW_TRY(const auto tables, Tables::fromJson(file, wanted));
    AirRules rules;
    for (const auto& [name, role] : roles) {
        const auto* row = tables.find("columns", name);
        if (row == nullptr) return fail(Trouble::badInput, {"air.rules"});
        for (const auto words : split(row->word("names"), '|')) {
            rules.columns.push_back({role, std::string(trimmed(words))});
        }
    }
    for (const auto& [name, damp] : damps) {
        const auto* row = tables.find("humidity", name);
        if (row == nullptr || row->number("least") > row->number("most")) {
            return fail(Trouble::badInput, {"air.rules"});
        }
        rules.humidityFor.at(static_cast<std::size_t>(damp)) = {{row->number("least")},
                                                                {row->number("most")}};
    }
    const auto* warmth = tables.find("alarms", "warmth");
    const auto* humidity = tables.find("alarms", "humidity");
    const auto* gap = tables.find("gaps", "joined");
    const auto* base = tables.find("development", "base");
    if (warmth == nullptr || humidity == nullptr || gap == nullptr || base == nullptr) {
        return fail(Trouble::badInput, {"air.rules"});
    }
    // Minutes are whole: what is shown is what is gone by.
    for (const double minutes : {warmth->number("least_minutes"), humidity->number("least_minutes"),
                                 gap->number("minutes")}) {
        if (minutes != std::floor(minutes)) return fail(Trouble::badInput, {"air.rules"});
    }
    const auto patience = [](const TableRow& row) {
        return Patience{row.number("back"), static_cast<int>(row.number("least_minutes"))};
    };
    rules.warmth = patience(*warmth);
    rules.humidity = patience(*humidity);
    rules.longestGapMinutes = static_cast<int>(gap->number("minutes"));
    rules.base = {base->number("celsius")};
    return rules;
}

}  // namespace burrow::air
