// iCalendar (RFC 5545): all-day events that any calendar shows. Events and not to-dos, because many calendars
// pass over to-dos (common practice, no source).
#pragma once

#include <string>
#include <string_view>
#include <vector>

#include "base/civil.h"
#include "base/ids.h"

namespace burrow::exchange {

struct AllDayEvent {
    /// The same thing to do has the same one in every file, so that a later file replaces what an earlier
    /// one said of it (RFC 5545, 3.8.4.7; a UUID as RFC 7986, 5.3 recommends).
    Uuid uid;
    CivilDay first;
    CivilDay last;  ///< itself still part of it
    std::string summary;
    std::string description;  ///< of any number of lines
    std::string location;     ///< left out where empty, as the category is
    std::string category;
};

struct Calendar {
    std::string name;
    Instant writtenAt;
    std::vector<AllDayEvent> events;  ///< at least one: a calendar without any is none (3.6)
};

/// The whole file. Later ones have a higher SEQUENCE, by which calendars tell the newer of two.
[[nodiscard]] std::string icalendar(const Calendar& calendar);

/// A text as the value of a property (3.3.11); control characters, which it can't hold, become spaces.
[[nodiscard]] std::string icalText(std::string_view text);
/// A content line with its CRLF, folded so that no line has more than 75 octets without it, and no character
/// is cut apart (3.1).
[[nodiscard]] std::string foldedLine(std::string_view line);

}  // namespace burrow::exchange
