#include "base/civil.h"

#include <fmt/format.h>

#include <chrono>
#include <cstdlib>

namespace burrow {
namespace {

/// Takes `count` digits off the front of `text`.
std::optional<int> takeDigits(std::string_view& text, std::size_t count) {
    if (text.size() < count) return std::nullopt;
    int value = 0;
    for (const char c : text.substr(0, count)) {
        if (c < '0' || c > '9') return std::nullopt;
        value = value * 10 + (c - '0');
    }
    text.remove_prefix(count);
    return value;
}

bool take(std::string_view& text, char expected) {
    if (text.empty() || text.front() != expected) return false;
    text.remove_prefix(1);
    return true;
}

std::optional<CivilDay> takeDate(std::string_view& text) {
    const auto year = takeDigits(text, 4);
    if (!year || !take(text, '-')) return std::nullopt;
    const auto month = takeDigits(text, 2);
    if (!month || !take(text, '-')) return std::nullopt;
    const auto day = takeDigits(text, 2);
    if (!day) return std::nullopt;
    return civilDay({*year, *month, *day});
}

/// The digits after a decimal sign, as milliseconds.
std::optional<int> takeFraction(std::string_view& text) {
    auto first = takeDigits(text, 1);
    if (!first) return std::nullopt;
    int milliseconds = *first * 100;
    for (int unit = 10; const auto digit = takeDigits(text, 1); unit /= 10) {
        milliseconds += *digit * unit;
    }
    return milliseconds;
}

struct TimeOfDay {
    int second = 0;
    int millisecond = 0;
};

std::optional<TimeOfDay> takeTime(std::string_view& text) {
    const auto hour = takeDigits(text, 2);
    if (!hour || !take(text, ':')) return std::nullopt;
    const auto minute = takeDigits(text, 2);
    int second = 0;
    int millisecond = 0;
    if (take(text, ':')) {
        const auto seconds = takeDigits(text, 2);
        if (!seconds) return std::nullopt;
        second = *seconds;
        if (take(text, '.') || take(text, ',')) {
            const auto fraction = takeFraction(text);
            if (!fraction) return std::nullopt;
            millisecond = *fraction;
        }
    }
    if (!minute || *hour > 23 || *minute > 59 || second > 59) return std::nullopt;
    return TimeOfDay{(*hour * 60 + *minute) * 60 + second, millisecond};
}

std::optional<int> takeOffset(std::string_view& text) {
    if (take(text, 'Z')) return 0;
    const int sign = text.front() == '-' ? -1 : 1;
    if (!take(text, '+') && !take(text, '-')) return std::nullopt;
    const auto hours = takeDigits(text, 2);
    take(text, ':');
    const auto minutes = text.empty() ? std::optional<int>(0) : takeDigits(text, 2);
    if (!hours || !minutes || *hours > 18 || *minutes > 59) return std::nullopt;
    return sign * (*hours * 60 + *minutes);
}

}  // namespace

YearMonthDay yearMonthDay(CivilDay day) {
    const std::chrono::year_month_day date{std::chrono::sys_days{std::chrono::days{day.days}}};
    return {static_cast<int>(date.year()), static_cast<int>(static_cast<unsigned>(date.month())),
            static_cast<int>(static_cast<unsigned>(date.day()))};
}

std::optional<CivilDay> civilDay(YearMonthDay date) {
    if (date.year < 1 || date.year > 9999 || date.month < 1 || date.day < 1) return std::nullopt;
    const std::chrono::year_month_day candidate{
        std::chrono::year{date.year}, std::chrono::month{static_cast<unsigned>(date.month)},
        std::chrono::day{static_cast<unsigned>(date.day)}};
    if (!candidate.ok()) return std::nullopt;
    const auto days = std::chrono::sys_days{candidate}.time_since_epoch().count();
    return CivilDay{static_cast<std::int32_t>(days)};
}

int weekday(CivilDay day) {
    const std::chrono::weekday weekday{std::chrono::sys_days{std::chrono::days{day.days}}};
    return static_cast<int>(weekday.c_encoding());
}

std::string isoDate(CivilDay day) {
    const auto date = yearMonthDay(day);
    return fmt::format("{:04}-{:02}-{:02}", date.year, date.month, date.day);
}

std::optional<CivilDay> parseIsoDate(std::string_view text) {
    const auto day = takeDate(text);
    return text.empty() ? day : std::nullopt;
}

std::string isoInstant(Instant instant) {
    constexpr std::int64_t msPerDay = 86'400'000;
    const auto floorDays =
        instant.ms >= 0 ? instant.ms / msPerDay : -((msPerDay - 1 - instant.ms) / msPerDay);
    const auto rest = instant.ms - floorDays * msPerDay;
    const auto text =
        fmt::format("{}T{:02}:{:02}:{:02}", isoDate({static_cast<std::int32_t>(floorDays)}),
                    rest / 3'600'000, rest / 60'000 % 60, rest / 1000 % 60);
    return rest % 1000 == 0 ? text + "Z" : fmt::format("{}.{:03}Z", text, rest % 1000);
}

std::optional<IsoMoment> parseIsoMoment(std::string_view text) {
    const auto day = takeDate(text);
    if (!day) return std::nullopt;
    IsoMoment moment{*day, std::nullopt, std::nullopt};
    if (text.empty()) return moment;
    if (!take(text, 'T') && !take(text, ' ')) return std::nullopt;
    const auto time = takeTime(text);
    if (!time) return std::nullopt;
    moment.secondOfDay = time->second;
    moment.millisecond = time->millisecond;
    if (text.empty()) return moment;
    moment.offsetMinutes = takeOffset(text);
    if (!moment.offsetMinutes || !text.empty()) return std::nullopt;
    return moment;
}

}  // namespace burrow
