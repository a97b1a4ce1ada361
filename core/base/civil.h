// Days as a keeper counts them, and instants as a computer does. A civil day is a square on the wall
// calendar: it has no hours and no zone, so adding seven of them never lands on a wrong date when
// the clocks change.
#pragma once

#include <compare>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

namespace burrow {

/// Days since 1970-01-01 of the proleptic Gregorian calendar.
struct CivilDay {
    std::int32_t days = 0;

    friend constexpr auto operator<=>(CivilDay, CivilDay) = default;
    friend constexpr CivilDay operator+(CivilDay day, int count) { return {day.days + count}; }
    friend constexpr CivilDay operator-(CivilDay day, int count) { return {day.days - count}; }
    /// Whole days from `b` to `a`.
    friend constexpr int operator-(CivilDay a, CivilDay b) { return a.days - b.days; }
};

struct YearMonthDay {
    int year = 1970;
    int month = 1;  ///< 1 to 12
    int day = 1;    ///< 1 to 31

    friend constexpr bool operator==(YearMonthDay, YearMonthDay) = default;
};

[[nodiscard]] YearMonthDay yearMonthDay(CivilDay day);
/// Nothing for a date that is not in the calendar (30 February) or outside years 1 to 9999.
[[nodiscard]] std::optional<CivilDay> civilDay(YearMonthDay date);
/// 0 for Sunday to 6 for Saturday.
[[nodiscard]] int weekday(CivilDay day);

/// ISO 8601 calendar date, "2026-05-08".
[[nodiscard]] std::string isoDate(CivilDay day);
[[nodiscard]] std::optional<CivilDay> parseIsoDate(std::string_view text);

/// Milliseconds since 1970-01-01T00:00:00Z, leap seconds not counted.
struct Instant {
    std::int64_t ms = 0;

    friend constexpr auto operator<=>(Instant, Instant) = default;
};

/// ISO 8601 in UTC with milliseconds only where there are any, "2026-05-08T20:14:00Z".
[[nodiscard]] std::string isoInstant(Instant instant);

/// A date with or without a time of day, and with or without an offset from UTC. What is missing is
/// for the reader to fill in from the keeper's zone.
struct IsoMoment {
    CivilDay day;
    std::optional<int> secondOfDay;
    std::optional<int> offsetMinutes;
    int millisecond = 0;  ///< of that second
};

/// Accepts "2026-05-08", "2026-05-08T21:14", "2026-05-08 21:14:05", with "Z" or "+02:00" after a
/// time; of a second's fraction all past the millisecond is dropped.
[[nodiscard]] std::optional<IsoMoment> parseIsoMoment(std::string_view text);

}  // namespace burrow
