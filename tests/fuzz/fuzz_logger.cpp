// The table of a temperature logger, as its maker never meant it.
#include <cmath>

#include "air/logger.h"
#include "base/text.h"
#include "fuzz/target.h"

using namespace burrow;
using namespace burrow::air;

namespace {

constexpr std::string_view tables = R"({
    "columns": [{"id": "moment", "names": "timestamp|date time", "source": "made up"},
                {"id": "date", "names": "date", "source": "made up"},
                {"id": "clock", "names": "time", "source": "made up"},
                {"id": "temperature", "names": "temperature|temp", "source": "made up"},
                {"id": "humidity", "names": "humidity|rh", "source": "made up"}],
    "alarms": [{"id": "warmth", "back": 1, "least_minutes": 1, "source": "made up"},
               {"id": "humidity", "back": 1, "least_minutes": 1, "source": "made up"}],
    "humidity": [{"id": "dry", "least": 20, "most": 70, "source": "made up"},
                 {"id": "moderate", "least": 30, "most": 80, "source": "made up"},
                 {"id": "moist", "least": 40, "most": 90, "source": "made up"},
                 {"id": "swamp", "least": 50, "most": 95, "source": "made up"}],
    "gaps": [{"id": "joined", "minutes": 60, "source": "made up"}],
    "development": [{"id": "base", "celsius": 15, "source": "made up"}]})";

std::vector<std::string> cellsOf(std::string_view line) {
    std::vector<std::string> cells;
    for (const auto cell : split(line, ';')) cells.emplace_back(cell);
    return cells;
}

}  // namespace

FUZZ_TARGET(logger) {
    static const auto rules = AirRules::fromJson(tables).value();
    static const auto zone = Zone::named("Europe/Berlin").value();
    const auto lines = split(bytes, '\n');
    std::vector<LoggerRow> rows;
    for (std::size_t i = 1; i < lines.size(); ++i) {
        rows.push_back({static_cast<int>(i), cellsOf(lines[i])});
    }
    const auto log = readLogger(cellsOf(lines.front()), rows, zone, rules);
    if (!log) return;
    BURROW_REQUIRE(log->samples.size() + log->bad.size() +
                       static_cast<std::size_t>(log->repeated) ==
                   rows.size());
    for (std::size_t i = 0; i < log->samples.size(); ++i) {
        const auto& sample = log->samples[i];
        BURROW_REQUIRE(sample.temperature || sample.humidity);
        BURROW_REQUIRE(i == 0 || log->samples[i - 1].at < sample.at);
        if (sample.temperature) BURROW_REQUIRE(std::abs(sample.temperature->value) <= 80);
        if (sample.humidity) BURROW_REQUIRE(sample.humidity->value <= 100);
    }
}
