#include "exchange/ical.h"

#include <fmt/format.h>

#include <algorithm>

namespace burrow::exchange {
namespace {

constexpr std::size_t longestLine = 75;

/// 2026-05-08 as 20260508.
std::string basicDate(CivilDay day) {
    auto text = isoDate(day);
    text.erase(std::remove(text.begin(), text.end(), '-'), text.end());
    return text;
}

/// 20260508T191400Z: whole seconds, as RFC 5545, 3.3.5 has them.
std::string basicInstant(Instant instant) {
    const Instant whole{instant.ms - ((instant.ms % 1000) + 1000) % 1000};
    auto text = isoInstant(whole);
    std::erase_if(text, [](char c) { return c == '-' || c == ':'; });
    return text;
}

/// Whole minutes since 2020: higher in every later file, and small enough for a signed 32-bit number.
std::int64_t sequenceAt(Instant instant) {
    constexpr std::int64_t start = 1'577'836'800'000;  // 2020-01-01T00:00:00Z
    return std::max<std::int64_t>(0, (instant.ms - start) / 60'000);
}

bool isMiddleOfCharacter(char c) { return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U; }

void addText(std::string& file, std::string_view property, std::string_view value) {
    if (!value.empty()) file += foldedLine(fmt::format("{}:{}", property, icalText(value)));
}

void addEvent(std::string& file, const AllDayEvent& event, Instant writtenAt) {
    file += "BEGIN:VEVENT\r\n";
    file += foldedLine("UID:" + event.uid.text());
    file += foldedLine("DTSTAMP:" + basicInstant(writtenAt));
    file += foldedLine(fmt::format("SEQUENCE:{}", sequenceAt(writtenAt)));
    file += foldedLine("DTSTART;VALUE=DATE:" + basicDate(event.first));
    // The end is the first day that is no longer part of it (3.8.2.2).
    file += foldedLine("DTEND;VALUE=DATE:" + basicDate(event.last + 1));
    addText(file, "SUMMARY", event.summary);
    addText(file, "DESCRIPTION", event.description);
    addText(file, "LOCATION", event.location);
    addText(file, "CATEGORIES", event.category);
    // Something to do is no reason to be shown as away.
    file += "TRANSP:TRANSPARENT\r\n";
    file += "END:VEVENT\r\n";
}

}  // namespace

std::string icalText(std::string_view text) {
    std::string escaped;
    for (std::size_t i = 0; i < text.size(); ++i) {
        const char c = text[i];
        const auto byte = static_cast<unsigned char>(c);
        if (c == '\r' && i + 1 < text.size() && text[i + 1] == '\n') continue;
        if (c == '\n' || c == '\r') {
            escaped += "\\n";
        } else if (c == '\\' || c == ';' || c == ',') {
            escaped += '\\';
            escaped += c;
        } else {
            escaped += (byte < 0x20 && c != '\t') || byte == 0x7F ? ' ' : c;
        }
    }
    return escaped;
}

std::string foldedLine(std::string_view line) {
    std::string folded;
    std::size_t room = longestLine;
    while (line.size() > room) {
        std::size_t end = room;
        while (end > 0 && isMiddleOfCharacter(line[end])) --end;
        // Bytes that are no UTF-8 may have no beginning of a character at all.
        if (end == 0) end = room;
        folded += line.substr(0, end);
        folded += "\r\n ";
        line.remove_prefix(end);
        room = longestLine - 1;  // the space that marks a folded line counts
    }
    folded += line;
    return folded + "\r\n";
}

std::string icalendar(const Calendar& calendar) {
    std::string file =
        "BEGIN:VCALENDAR\r\n"
        "VERSION:2.0\r\n"
        "PRODID:-//Burrowbook//Due dates//EN\r\n"
        "CALSCALE:GREGORIAN\r\n";
    addText(file, "NAME", calendar.name);          // RFC 7986, 5.1
    addText(file, "X-WR-CALNAME", calendar.name);  // the name most calendars read
    for (const auto& event : calendar.events) addEvent(file, event, calendar.writtenAt);
    return file + "END:VCALENDAR\r\n";
}

}  // namespace burrow::exchange
