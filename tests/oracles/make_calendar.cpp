// Writes the awkward calendar of the tests, and what it should read as in JSON, for a reader in another
// language: make_calendar FILE.ics FILE.json
#include <fstream>
#include <nlohmann/json.hpp>

#include "support/calendar.h"

int main(int argc, char** argv) {
    if (argc != 3) return 2;
    const auto calendar = burrow::test::awkwardCalendar();
    std::ofstream(argv[1], std::ios::binary) << burrow::exchange::icalendar(calendar);
    nlohmann::json events = nlohmann::json::array();
    for (const auto& event : calendar.events) {
        auto description = event.description;
        for (std::size_t at; (at = description.find('\r')) != std::string::npos;) {
            description.erase(at, 1);
        }
        events.push_back({{"uid", event.uid.text()},
                          {"first", burrow::isoDate(event.first)},
                          {"after", burrow::isoDate(event.last + 1)},
                          {"summary", event.summary},
                          {"description", description},
                          {"location", event.location},
                          {"category", event.category}});
    }
    std::ofstream(argv[2]) << nlohmann::json{{"name", calendar.name}, {"events", events}}.dump(1);
    return 0;
}
