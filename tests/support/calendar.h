// A calendar with everything in it that a reader could trip over, for the libraries that read it in tests.
#pragma once

#include "exchange/ical.h"

namespace burrow::test {

inline std::string longGerman() {
    std::string text = "Feed; water, check\\moult\nzweite Zeile: ";
    for (int i = 0; i < 60; ++i) text += "ü";
    return text;
}

inline exchange::Calendar awkwardCalendar() {
    exchange::Calendar calendar{"Kiln Row; \"warm\", dim", Instant{1'778'267'640'123}, {}};
    const auto add = [&](const std::string& summary, const std::string& description, int first,
                         int days) {
        exchange::AllDayEvent event;
        event.uid = Uuid::named("test " + std::to_string(calendar.events.size()));
        event.first = CivilDay{first};
        event.last = CivilDay{first + days};
        event.summary = summary;
        event.description = description;
        event.location = "A / 2, left\\right";
        event.category = "Feeding";
        calendar.events.push_back(std::move(event));
    };
    add("Feed: KR-214 Brachypelma hamorii", "Opens Friday 8 May.", 20'581, 4);
    add(longGerman(), "\n\n", 20'600, 0);
    // Lines that have to be folded at each of four bytes of a character.
    for (int shift = 0; shift < 4; ++shift) {
        std::string spiders(static_cast<std::size_t>(shift), 'x');
        for (int i = 0; i < 40; ++i) spiders += "\U0001F577";
        add(spiders, spiders, 20'610 + shift, shift);
    }
    add(std::string(66, 'a'), std::string(67, 'b'), 20'620, 1);  // "SUMMARY:" makes it 74 and 75
    add("END:VEVENT", "BEGIN:VEVENT\r\nUID:x", 20'621, 1);
    return calendar;
}

}  // namespace burrow::test
